/** The keyboard map: every key of the program on one page. */
export const keys = {
  title: 'Keys',
  open: 'Keys',
  hint: '?',
  how: 'A key that stands in a button works as well without touching the button. In a text field only the keys of the field work, and the function keys.',
  theme: 'Light or dark',
  themes: { system: 'As the system', light: 'Light', dark: 'Dark' },
  sections: [
    {
      name: 'Everywhere',
      keys: [
        ['F1', 'Jobs'],
        ['F2', 'Take apart'],
        ['F3', 'Off the machine'],
        ['F4', 'Put back'],
        ['F6', 'Before you start'],
        ['F8', 'Handbook'],
        ['F9', 'Photos'],
        ['F12', 'Stop work'],
        ['Ctrl Z', 'Undo'],
        ['Ctrl Shift Z', 'Do it again'],
        ['Tab, Enter', 'To the next control; press it'],
        ['Y', 'Yes, where something must be looked at first'],
        ['Esc', 'Close what asks'],
        ['?', 'This page'],
      ],
    },
    {
      name: 'Jobs',
      keys: [
        ['Enter', 'Carry on'],
        ['N', 'Start a job'],
        ['/', 'Search every job'],
        ['S', 'Open the sample job, while there is none'],
      ],
    },
    {
      name: 'Depth line',
      keys: [
        ['Up, Down', 'Along the line, far removals come near'],
        ['Home, End', 'To its ends'],
        ['Enter', 'Open what is there'],
      ],
    },
    {
      name: 'Take apart',
      keys: [
        ['any letter', 'Type what came off'],
        ['Enter', 'Write it down, next removal'],
        ['F7, F10', 'Write it down as slackened, as moved aside'],
        ['Tab', 'Take the word that is offered'],
        ['↑', 'The last line again'],
        ['Alt P, Alt H', 'Plugs, hose ends, one after the other; Esc ends it'],
        ['Alt T', 'Take all photos into this removal'],
        ['Alt B', 'At the bench, and back'],
      ],
    },
    {
      name: 'Take apart and at the bench',
      keys: [
        ['Alt R', 'The same on the other side'],
        ['Alt ↑, Alt ↓', 'Earlier, later in the log'],
      ],
    },
    {
      name: 'Marks on a photo',
      keys: [
        ['Arrows', 'From mark to mark; with Shift the mark moves, farther while it is held down'],
        ['Enter', 'Touch it'],
        ['Delete', 'Take the mark away'],
      ],
    },
    {
      name: 'Photos',
      keys: [
        ['Arrows', 'From photo to photo; with Shift all up to there'],
        ['Space', 'Select it, or not'],
        ['digits, Enter', 'File what is selected into that removal'],
        ['U', 'Back to not filed'],
        ['M', 'Make removals from them'],
        ['L', 'Look closely'],
        ['Delete', 'Take away from the job'],
        ['Ctrl A, Esc', 'Select all, none'],
      ],
    },
    {
      name: 'A photo, looked at closely',
      keys: [
        ['Left, Right', 'The one before, the next'],
        ['+, −, 0', 'Nearer, farther, all of it'],
        ['Arrows', 'About on it, drawn near'],
        ['Esc', 'Close'],
      ],
    },
    {
      name: 'Put back',
      keys: [
        ['Space', 'The lit hole is through its round: on to the next'],
        ['S', 'All started by hand'],
        ['T', 'All tight'],
        ['Enter', 'The lit hole, then: it is back, or the next thing asked'],
        ['D', 'Day by day: what can go ahead when; there Left and Right are the days'],
        ['R', 'What must come off to reach something'],
      ],
    },
    {
      name: 'Counting a bag',
      keys: [
        ['digits', 'How many lie in it'],
        ['+, −', 'One more, one less'],
        ['Enter', 'That many'],
      ],
    },
  ],
} as const;
