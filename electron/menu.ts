import type { MenuItemConstructorOptions } from 'electron';

export interface MenuActions {
  readonly showWorkshop: () => void;
}

/**
 * What only a desktop has. Undo and redo are not here: they are the record's, and the page has them with the same
 * keys everywhere.
 */
export function menuTemplate(platform: NodeJS.Platform, actions: MenuActions): MenuItemConstructorOptions[] {
  const mac = platform === 'darwin';
  const file: MenuItemConstructorOptions[] = [
    { label: 'Show the workshop’s folder', click: actions.showWorkshop },
    { type: 'separator' },
    { role: mac ? 'close' : 'quit' },
  ];
  return [
    ...(mac ? [{ role: 'appMenu' } as const] : []),
    { label: 'File', submenu: file },
    {
      label: 'Edit',
      submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
    },
    {
      label: 'View',
      submenu: [
        { role: 'reload' },
        { type: 'separator' },
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
    { role: 'windowMenu' },
  ];
}
