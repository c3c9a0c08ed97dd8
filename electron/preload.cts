import type * as Electron from 'electron';

/**
 * The two functions a page gets from the desktop, and never a pipe: it can neither name a channel nor a place on
 * the disk. Plain script once the types are taken out; it runs sandboxed.
 */
const { contextBridge, ipcRenderer } = require('electron') as typeof Electron;

contextBridge.exposeInMainWorld('everyboltDesktop', {
  /** Asks for a folder; null when the question was closed. */
  chooseFolder: async (): Promise<unknown> => ipcRenderer.invoke('choose-folder'),
  /** Shows a file of the workshop, by its name in it, in its folder; false when there is no such name. */
  showInFolder: async (name: unknown): Promise<unknown> => ipcRenderer.invoke('show-in-folder', String(name)),
});
