import { createHash } from 'node:crypto';
import { join } from 'node:path';
import {
  keepHost,
  type KeptHost,
  type Ready,
  SESSION_COOKIE,
  type StartProcess,
} from '../core/host/launch.ts';
import { guardContents, guardSession, insideWorkshop, isOwn } from './guards.ts';
import { menuTemplate } from './menu.ts';
import type { Parts, WindowPart } from './parts.ts';
import { bringForward, openWindow } from './window.ts';

export interface ShellOptions {
  readonly workshop: string;
  /** The preload as plain script. */
  readonly preload: string;
  readonly platform: NodeJS.Platform;
  readonly secret: string;
  readonly start: StartProcess;
  /** Told once, when the first page has been loaded into the window. */
  readonly onShown?: () => void;
}

/**
 * The desktop shell: one window per workshop on a host of its own. It starts the host, hands it the secret, puts
 * the same secret into the window's cookie, and starts the host again when it dies.
 */
export async function runShell(electron: Parts, options: ShellOptions): Promise<void> {
  const { app } = electron;
  app.setName('Everybolt');
  // One folder per workshop: the runtime's single-instance lock is on that folder.
  app.setPath('userData', join(app.getPath('appData'), 'Everybolt', folderName(options.workshop)));
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  const shell = new Shell(electron, options);
  app.on('second-instance', () => shell.comeForward());
  app.on('window-all-closed', () => app.quit());
  app.on('before-quit', (event) => shell.beforeQuit(event));
  app.on('web-contents-created', (_event, contents) => guardContents(contents, shell.origin));
  await app.whenReady();
  shell.begin();
}

function folderName(workshop: string): string {
  return createHash('sha256').update(workshop, 'utf8').digest('hex').slice(0, 16);
}

class Shell {
  private address: string | null = null;
  private window: WindowPart | null = null;
  private host: KeptHost | null = null;
  private ended = false;
  private shown = false;
  private readonly electron: Parts;
  private readonly options: ShellOptions;

  constructor(electron: Parts, options: ShellOptions) {
    this.electron = electron;
    this.options = options;
  }

  readonly origin = (): string | null => this.address;

  begin(): void {
    const { Menu, session } = this.electron;
    guardSession(session.defaultSession, this.origin);
    const actions = { showWorkshop: () => void this.electron.shell.openPath(this.options.workshop) };
    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(this.options.platform, actions)));
    this.answerPreload();
    this.host = keepHost({
      start: this.options.start,
      secret: this.options.secret,
      onReady: (ready) => void this.show(ready).catch((error: unknown) => this.fail(String(error))),
      onDown: (refusal) => this.fail(refusal.sentence),
      // The page says by itself that its host is away, and when it is back.
      onDeath: () => {},
    });
  }

  comeForward(): void {
    if (this.window && !this.window.isDestroyed()) bringForward(this.window);
  }

  /** The program quits when the host has put things away, not before. */
  beforeQuit(event: { preventDefault(): void }): void {
    if (this.ended) return;
    event.preventDefault();
    const end = () => {
      this.ended = true;
      this.electron.app.quit();
    };
    if (this.host === null) end();
    else void this.host.close().then(end, end);
  }

  private async show({ address }: Ready): Promise<void> {
    const moved = address !== this.address;
    this.address = address;
    const url = `${address}/`;
    await this.electron.session.defaultSession.cookies.set({
      url,
      name: SESSION_COOKIE,
      value: this.options.secret,
      httpOnly: true,
      sameSite: 'strict',
    });
    if (this.window === null) {
      const window = openWindow(this.electron, this.options.preload);
      window.once('closed', () => {
        this.window = null;
      });
      this.window = window;
    } else if (!moved) return;
    await this.window.loadURL(url);
    if (!this.shown) this.options.onShown?.();
    this.shown = true;
  }

  private fail(sentence: string): void {
    this.electron.dialog.showErrorBox('Everybolt', sentence);
    this.electron.app.quit();
  }

  /** The two things the page may ask for. Each is asked by our own page only. */
  private answerPreload(): void {
    const { ipcMain, dialog, shell } = this.electron;
    const asks = (event: { readonly senderFrame: { readonly url: string } | null }) =>
      event.senderFrame !== null && isOwn(event.senderFrame.url, this.address);
    ipcMain.handle('choose-folder', async (event) => {
      if (!asks(event)) return null;
      const chosen = await dialog.showOpenDialog({ properties: ['openDirectory', 'createDirectory'] });
      return chosen.canceled ? null : (chosen.filePaths[0] ?? null);
    });
    ipcMain.handle('show-in-folder', (event, name) => {
      const file = asks(event) ? insideWorkshop(this.options.workshop, name) : null;
      if (file !== null) shell.showItemInFolder(file);
      return file !== null;
    });
  }
}
