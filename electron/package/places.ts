import { join } from 'node:path';

/** Where things lie in the packed program, below the runtime's resources. */
export interface PackedPaths {
  readonly node: string;
  readonly main: string;
  readonly screens: string;
}

/** Name of the host's folder beside the shell: plain files, since a plain Node cannot read an archive. */
export const HOST_FOLDER = 'host';

export const nodeName = (platform: NodeJS.Platform): string => (platform === 'win32' ? 'node.exe' : 'node');

/** `resources`: the runtime's resources folder. */
export function packedPaths(resources: string, platform: NodeJS.Platform): PackedPaths {
  const host = join(resources, HOST_FOLDER);
  return {
    node: join(host, 'runtime', nodeName(platform)),
    main: join(host, 'core', 'host', 'main.ts'),
    screens: join(host, 'dist', 'renderer'),
  };
}
