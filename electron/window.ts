import type { BrowserWindowConstructorOptions } from 'electron';
import type { Parts, WindowPart } from './parts.ts';

/** What a window may do: show pages of our host, in a sandbox, with the two functions of the preload. */
function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    title: 'Everybolt',
    width: 1280,
    height: 860,
    minWidth: 360,
    minHeight: 480,
    show: false,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  };
}

/** Opens the window; it is shown once there is something to see. */
export function openWindow({ BrowserWindow }: Pick<Parts, 'BrowserWindow'>, preload: string): WindowPart {
  const window = new BrowserWindow(windowOptions(preload));
  window.once('ready-to-show', () => window.show());
  return window;
}

export function bringForward(window: WindowPart): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}
