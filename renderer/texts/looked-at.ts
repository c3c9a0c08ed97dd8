const of = (good: number, all: number): string => (good === all ? `${all}` : `${good} of ${all}`);
const named = (all: number, one: string, many: string): string => (all === 1 ? one : many);

type Kind =
  | 'fasteners'
  | 'torques'
  | 'parts'
  | 'fluids'
  | 'bleedings'
  | 'isolations'
  | 'temporaries'
  | 'finals'
  | 'own';

const kinds: Readonly<Record<Kind, (good: number, all: number) => string>> = {
  fasteners: (good, all) => `${of(good, all)} ${named(all, 'fastener', 'fasteners')} in and tight.`,
  torques: (good, all) => `${of(good, all)} of them with a torque, ticked as reached.`,
  parts: (good, all) => `${of(good, all)} ${named(all, 'part', 'parts')} back on.`,
  fluids: (good, all) => `${of(good, all)} ${named(all, 'fluid', 'fluids')} filled and checked for leaks.`,
  bleedings: (good, all) => `${of(good, all)} ${named(all, 'system', 'systems')} bled and checked hot.`,
  isolations: (good, all) =>
    `${of(good, all)} ${named(all, 'isolation', 'isolations')} given back: power, pressure and the like.`,
  temporaries: (good, all) =>
    `${of(good, all)} ${named(all, 'rag, cap or strap', 'rags, caps, straps and the like')} taken out again.`,
  finals: (good, all) => `${of(good, all)} final ${named(all, 'tightening', 'tightenings')} done.`,
  own: (good, all) => `${of(good, all)} ${named(all, 'step', 'steps')} of your own done.`,
};

const none: Partial<Readonly<Record<Kind, string>>> = {
  fasteners: 'fasteners',
  parts: 'parts',
  torques: 'torques',
  fluids: 'fluids',
  isolations: 'isolations',
  temporaries: 'rags, caps and straps',
};

/** What the check before closing looked at. */
export const lookedAt = {
  title: 'Looked at',
  free: 'Nothing holds the check before closing.',
  kinds,
  none,
  leftOut: (count: number) => `${count} left out for a reason.`,
  missing: (count: number) => (count === 0 ? 'No piece is looked for.' : `${count} still looked for.`),
  passed: (count: number) => `${count} open ${named(count, 'point', 'points')} passed by name.`,
  noneOf: (names: string) => `None in this job: ${names}.`,
  first: (count: number) =>
    `Nothing holds this check so far. ${count} ${named(count, 'step comes', 'steps come')} before it.`,
};
