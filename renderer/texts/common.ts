/** Words that stand on more than one screen. */
export const common = {
  grave: { stop: 'Stop', warn: 'Check' },
  close: 'Close',
  cancel: 'Cancel',
  undo: 'Undo',
  undoHint: 'Ctrl Z',
  unsaved: (count: number) =>
    count === 1 ? '1 change is not saved yet.' : `${count} changes are not saved yet.`,
  screens: 'Screens',
  line: 'Line',
  lineAndScreens: 'Depth line and screens',
  jobs: 'Jobs',
  begin: 'Before you start',
  removal: 'Take apart',
  bench: 'At the bench',
  off: 'Off the machine',
  putback: 'Put back',
  photos: 'Photos',
  stopwork: 'Stop work',
  record: 'Record',
  handbook: 'Handbook',
};
