/** The screen Off the machine. */
export const off = {
  title: 'Off the machine',
  nothing:
    'Nothing is off yet. What you take off is listed here by bag, tin, tray and shelf, with its count.',
  tools: 'Help with pieces',
  toGet: (count: number) => (count === 0 ? 'To get' : `To get, ${count}`),
  pickLater: 'Take something off first. Its bag is counted here.',
  pickBag: 'Touch a bag to count it.',
  of: (expected: number) => `of ${expected}`,
  notCounted: 'not counted yet',
  countHint: 'Enter',
  itIs: (count: number) => `It is ${count}`,
  again: 'Count again',
  found: 'Found it',
  fewer: 'One less',
  more: 'One more',
  here: (counted: number, expected: number) => `${counted} of ${expected} are here`,
  scale: 'mm, to scale',
  drawn: (names: readonly string[]) => `Drawn to scale, one above the other: ${names.join('; ')}`,
  wants: 'To get',
  wantsOpen: 'still open',
  wantsEmpty: 'Nothing to get. What is short, must be renewed or is damaged comes here by itself.',
  wantState: (what: string) => `State of ${what}`,
  states: { needed: 'needed', ordered: 'ordered', here: 'here', dropped: 'dropped' },
  saveList: 'Save the list (CSV)',
  bag: (kind: string, label: string) => `${kind[0]?.toUpperCase() ?? ''}${kind.slice(1)} ${label}`,
  kinds: { bag: 'Bags', tin: 'Tins', tray: 'Trays', shelf: 'Shelves' },
  nowhere: 'Nobody wrote down where',
  away: 'Not in the workshop',
  loose: 'Still on the machine, loose',
  /** All pieces, and all the places where they are: both sides come to the same. */
  summary: (at: {
    readonly off: number;
    readonly got: number;
    readonly inHand: number;
    readonly back: number;
    readonly away: number;
    readonly gone: number;
  }) => {
    const came = at.got > 0 ? `, ${at.got} new` : '';
    const places = [
      `${at.inHand} in hand`,
      ...(at.back > 0 ? [`${at.back} back in`] : []),
      ...(at.away > 0 ? [`${at.away} away`] : []),
      ...(at.gone > 0 ? [`${at.gone} scrapped, written off or put to stock`] : []),
    ];
    return `${at.off} ${at.off === 1 ? 'fastener' : 'fasteners'} off${came}: ${places.join(', ')}`;
  },
  wantBy: (what: string) => `Here by, ${what}`,
  unaccounted: (count: number) => `${count} unaccounted`,
  looseOn: (count: number) => `${count} more are loose on the machine.`,
  awaySince: (who: string, date: string) => `${who === '' ? 'away' : `with ${who}`}, since ${date}`,
  late: (time: string) => `${time} late`,
  looseAbout: 'slackened only',
  fates: {
    refit: 'refit',
    'clean and refit': 'clean and refit',
    renew: 'renew',
    repair: 'repair',
    'send out': 'send out',
    exchange: 'exchange',
    'carry over': 'carry over',
    'leave out': 'leave out',
    undecided: 'undecided',
  },
  mustRenew: 'must be renewed',
  newInHand: 'renew, new one in hand',
  counted: (date: string) => `counted ${date}`,
  neverCounted: 'not counted yet',
  differs: (counted: number) => `counted at ${counted}`,
  sayFits: (counted: number) => `The books say ${counted}. Count what is in your hand.`,
  sayEmpty: 'The books say that nothing is left in it.',
  emptied: 'empty',
  withStack: (items: string) => `with ${items}`,
  notKnown: 'nobody said how many',
  saySome: 'Nobody said how many there are. Count what is in your hand and it is written down.',
  countUnknown: '?',
  countFirst: 'Count them',
  ofUnknown: 'how many?',
  lookAt: 'Look there before you buy one',
  missing: (count: number) => {
    if (count < 0) return count === -1 ? 'One too many.' : `${-count} too many.`;
    return count === 1 ? 'One is missing.' : `${count} are missing.`;
  },
  alikeTitle: 'Look-alikes',
  giveUp: 'Searched, not found',
  giveUpTitle: 'Write it off',
  giveUpAsk: 'Where did you look, and why may it stay lost?',
  giveUpExample: 'Gear chamber and bench searched twice',
  giveUpGo: 'Write it off',
  sendBack: 'It is back',
  isAway: 'away',
  isOff: 'off, in no bag',
  itsRemoval: 'Its removal',
  send: 'Send it out',
  sendTitle: (what: string) => `Send out: ${what}`,
  sendAsk: 'To whom, and what for?',
  sendExample: 'Machine shop, bore 24 mm',
  sendDue: 'Back by, if a day was promised',
  sendGo: 'It is out',
  awayDue: (date: string) => `, due ${date}`,
  awayNoDue: '. No day was promised.',
  fateSay: (fate: string) => `On the way back: ${fate}.`,
  csv: ['what', 'pieces', 'why', 'state'],
  getFor: (title: string) => `for ${title}`,
  causes: {
    short: 'short',
    'must renew': 'must be new',
    exchange: 'exchange',
    repair: 'for a repair',
    noted: 'noted',
  },
};
