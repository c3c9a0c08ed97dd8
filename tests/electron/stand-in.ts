import type {
  BrowserWindowConstructorOptions,
  CookiesSetDetails,
  Menu,
  MenuItemConstructorOptions,
  WebContents,
} from 'electron';
import type { HostProcess, ProcessHears, StartProcess } from '../../core/host/launch.ts';
import type { ContentsPart, Parts, SessionPart, WindowPart } from '../../electron/parts.ts';

/** Electron as far as the shell uses it, in memory. The compiler holds it to the same types as the real one. */
export interface StandIn {
  readonly parts: Parts;
  /** What happened, in order. */
  readonly log: string[];
  readonly cookies: CookiesSetDetails[];
  readonly windows: FakeWindow[];
  readonly handlers: Map<string, (event: FrameEvent, argument: unknown) => unknown>;
  readonly session: SessionRecord;
  /** The template of the menu, as it was set. */
  menu(): readonly MenuItemConstructorOptions[];
  /** Says an event of the app to its listeners. */
  say(event: 'second-instance' | 'window-all-closed'): void;
  /** Says that the app is about to quit; true when the shell held it back. */
  sayQuit(): boolean;
  sayContents(contents: ContentsPart): void;
  chosenFolder: string | null;
}

interface FrameEvent {
  readonly senderFrame: { readonly url: string } | null;
}

interface FakeWindow {
  readonly options: BrowserWindowConstructorOptions;
  readonly loaded: string[];
  shown: boolean;
  minimized: boolean;
  destroyed: boolean;
  say(event: 'ready-to-show' | 'closed'): void;
}

interface SessionRecord {
  permission: Parameters<SessionPart['setPermissionRequestHandler']>[0];
  check: Parameters<SessionPart['setPermissionCheckHandler']>[0];
  device: Parameters<SessionPart['setDevicePermissionHandler']>[0];
  /** Whether a request to this address would be stopped. */
  stops(url: string): boolean | undefined;
}

export function standIn(options: { first: boolean }): StandIn {
  const log: string[] = [];
  const cookies: CookiesSetDetails[] = [];
  const windows: FakeWindow[] = [];
  const handlers: StandIn['handlers'] = new Map();
  const simple = new Map<string, () => void>();
  let beforeQuit: (event: { preventDefault(): void }) => void = () => {};
  let onContents: (event: never, contents: WebContents) => void = () => {};
  let template: readonly MenuItemConstructorOptions[] = [];
  let before: Parameters<SessionPart['webRequest']['onBeforeRequest']>[0] = () => {};
  const session: SessionRecord = {
    permission: null,
    check: null,
    device: null,
    stops: (url) => {
      let stopped: boolean | undefined;
      before({ url }, (answer) => {
        stopped = answer.cancel;
      });
      return stopped;
    },
  };
  const app: Parts['app'] = {
    getPath: (name) => `/paths/${name}`,
    quit: () => void log.push('quit'),
    requestSingleInstanceLock: () => options.first,
    setName: (name) => void log.push(`name ${name}`),
    setPath: (name, path) => void log.push(`path ${name} ${path}`),
    whenReady: async () => Promise.resolve(),
    on: (event: string, listener: never) => {
      if (event === 'before-quit') beforeQuit = listener;
      else if (event === 'web-contents-created') onContents = listener;
      else simple.set(event, listener);
    },
  };
  const state: StandIn = {
    log,
    cookies,
    windows,
    handlers,
    session,
    chosenFolder: null,
    menu: () => template,
    say: (event) => simple.get(event)?.(),
    sayQuit: () => {
      let held = false;
      beforeQuit({
        preventDefault: () => {
          held = true;
        },
      });
      return held;
    },
    sayContents: (contents) => onContents(undefined as never, contents as WebContents),
    parts: {
      app,
      BrowserWindow: windowClass(windows),
      Menu: {
        buildFromTemplate: (made) => {
          template = made;
          return {} as Menu;
        },
        setApplicationMenu: () => void log.push('menu'),
      },
      dialog: {
        showErrorBox: (_title, content) => void log.push(`error ${content}`),
        showOpenDialog: async () =>
          Promise.resolve({
            canceled: state.chosenFolder === null,
            filePaths: state.chosenFolder === null ? [] : [state.chosenFolder],
          }),
      },
      ipcMain: { handle: (channel, listener) => void handlers.set(channel, listener) },
      session: {
        defaultSession: {
          cookies: { set: async (details) => Promise.resolve(void cookies.push(details)) },
          setPermissionRequestHandler: (handler) => {
            session.permission = handler;
          },
          setPermissionCheckHandler: (handler) => {
            session.check = handler;
          },
          setDevicePermissionHandler: (handler) => {
            session.device = handler;
          },
          webRequest: {
            onBeforeRequest: (listener) => {
              before = listener;
            },
          },
        },
      },
      shell: {
        showItemInFolder: (path) => void log.push(`show ${path}`),
        openPath: async (path) => {
          log.push(`open ${path}`);
          return Promise.resolve('');
        },
      },
    },
  };
  return state;
}

function windowClass(windows: FakeWindow[]): Parts['BrowserWindow'] {
  return class implements WindowPart {
    private readonly record: FakeWindow;
    constructor(options: BrowserWindowConstructorOptions) {
      const listeners = new Map<string, () => void>();
      this.record = {
        options,
        loaded: [],
        shown: false,
        minimized: false,
        destroyed: false,
        say: (event) => listeners.get(event)?.(),
      };
      this.once = (event, listener) => listeners.set(event, listener);
      windows.push(this.record);
    }
    readonly once: WindowPart['once'];
    readonly loadURL = async (url: string) => Promise.resolve(void this.record.loaded.push(url));
    readonly show = () => {
      this.record.shown = true;
    };
    readonly focus = () => {};
    readonly restore = () => {
      this.record.minimized = false;
    };
    readonly isMinimized = () => this.record.minimized;
    readonly isDestroyed = () => this.record.destroyed;
  };
}

/** A host process that the test plays. */
export interface PlayedHost {
  readonly start: StartProcess;
  /** Every start, with what was handed over. */
  readonly starts: {
    readonly handover: Parameters<StartProcess>[0];
    readonly hears: ProcessHears;
    ended: boolean;
  }[];
}

export function playedHost(): PlayedHost {
  const starts: PlayedHost['starts'] = [];
  return {
    starts,
    start: (handover, hears): HostProcess => {
      const one = { handover, hears, ended: false };
      starts.push(one);
      return {
        end: () => {
          one.ended = true;
        },
        kill: hears.gone,
      };
    },
  };
}
