import type * as Electron from 'electron';

/**
 * The little of Electron that the shell uses, in Electron's own types. The module is handed in, so that the shell
 * runs in tests with a stand-in of this shape; the compiler holds both the real module and the stand-in to it.
 */
export interface Parts {
  readonly app: AppPart;
  readonly BrowserWindow: new (options: Electron.BrowserWindowConstructorOptions) => WindowPart;
  readonly Menu: MenuPart;
  readonly dialog: DialogPart;
  readonly ipcMain: IpcPart;
  readonly session: { readonly defaultSession: SessionPart };
  readonly shell: Pick<typeof Electron.shell, 'showItemInFolder' | 'openPath'>;
}

interface AppPart
  extends Pick<
    Electron.App,
    'getPath' | 'quit' | 'requestSingleInstanceLock' | 'setName' | 'setPath' | 'whenReady'
  > {
  on(event: 'second-instance' | 'window-all-closed', listener: () => void): unknown;
  on(event: 'before-quit', listener: (event: Pick<Electron.Event, 'preventDefault'>) => void): unknown;
  on(
    event: 'web-contents-created',
    listener: (event: Electron.Event, contents: Electron.WebContents) => void,
  ): unknown;
}

export interface WindowPart
  extends Pick<
    Electron.BrowserWindow,
    'focus' | 'isDestroyed' | 'isMinimized' | 'loadURL' | 'restore' | 'show'
  > {
  once(event: 'ready-to-show' | 'closed', listener: () => void): unknown;
}

export interface ContentsPart extends Pick<Electron.WebContents, 'setWindowOpenHandler'> {
  on(
    event: 'will-navigate' | 'will-redirect' | 'will-frame-navigate',
    listener: (details: Pick<Electron.Event, 'preventDefault'> & { readonly url: string }) => void,
  ): unknown;
  on(
    event: 'will-attach-webview',
    listener: (event: Pick<Electron.Event, 'preventDefault'>) => void,
  ): unknown;
}

interface MenuPart {
  buildFromTemplate(template: Electron.MenuItemConstructorOptions[]): Electron.Menu;
  setApplicationMenu(menu: Electron.Menu | null): void;
}

interface DialogPart {
  showErrorBox(title: string, content: string): void;
  showOpenDialog(options: Electron.OpenDialogOptions): Promise<Electron.OpenDialogReturnValue>;
}

interface IpcPart {
  handle(
    channel: string,
    listener: (
      event: { readonly senderFrame: { readonly url: string } | null },
      argument: unknown,
    ) => unknown,
  ): void;
}

export interface SessionPart
  extends Pick<
    Electron.Session,
    'setDevicePermissionHandler' | 'setPermissionCheckHandler' | 'setPermissionRequestHandler'
  > {
  readonly cookies: Pick<Electron.Cookies, 'set'>;
  readonly webRequest: {
    onBeforeRequest(
      listener: (
        details: { readonly url: string },
        callback: (answer: Electron.CallbackResponse) => void,
      ) => void,
    ): void;
  };
}
