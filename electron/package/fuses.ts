import { type FuseConfig, FuseV1Options, FuseVersion } from '@electron/fuses';

/**
 * What the packed runtime is allowed to do, set in the program file itself. All of them are named, so that a new fuse
 * of a later runtime stops the build until somebody has decided.
 */
export const FUSES = {
  version: FuseVersion.V1,
  strictlyRequireAllFuses: true,
  // The host has a Node of its own: nobody may use the runtime as one.
  [FuseV1Options.RunAsNode]: false,
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: false,
  [FuseV1Options.EnableNodeCliInspectArguments]: false,
  // The session cookie is made anew at each start and never reaches the disk.
  [FuseV1Options.EnableCookieEncryption]: false,
  // The shell is read from its archive only, and the archive must be the one that was packed.
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: true,
  [FuseV1Options.OnlyLoadAppFromAsar]: true,
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
  // Pages come from the host by HTTP; a page from the disk has no more rights than any other.
  [FuseV1Options.GrantFileProtocolExtraPrivileges]: false,
  [FuseV1Options.WasmTrapHandlers]: true,
} as const satisfies FuseConfig;
