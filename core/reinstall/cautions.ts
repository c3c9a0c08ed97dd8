import type { Situation } from './situation.ts';

const ENERGY: Record<string, string> = {
  electricity:
    'Isolate and lock out the supply; only the person who put the lock on takes it off. Mains work is for qualified persons.',
  pressure: 'Let all pressure off and check that it is off before opening anything.',
  spring: 'A stored spring can kill: cage it or let it out with the proper tool.',
  load: 'Never go under a load that hangs or stands on a jack only; use stands.',
  motion: 'Keep clear of everything that can turn; block it.',
  ignition: 'Make sure that it cannot start by itself.',
  fuel: 'Fuel vapour burns: no flame, no spark, good air.',
  heat: 'Let it cool down; hot fluids scald.',
  other: 'Check that it is really safe before you touch it.',
};

const WORDS: readonly [RegExp, string][] = [
  [/\bbrake/i, 'Brake dust harms the lungs: do not blow it off. Brake work comes under the maker’s manual.'],
  [
    /\b(air ?bag|restraint)/i,
    'Airbags and belts: only by trained persons, with the supply off and the waiting time kept.',
  ],
  [/\brefrigerant/i, 'Refrigerant only by licensed technicians.'],
  [/\b(spring|strut)\b/i, 'Stored springs: use the proper compressor.'],
  [/\b(hot|steam|boiler)\b/i, 'Hot fluid under pressure scalds: let it cool first.'],
];

/** Cautions of a step, short, where the hand goes: what was written, and the usual ones. The maker's manual comes first. */
export function cautionsOf(at: Situation, node: number): string[] {
  const one = at.graph.nodes[node];
  if (!one) return [];
  const { log } = at.graph;
  const removal = one.kind === 'S' || one.kind === 'I' ? log.removals[one.index] : undefined;
  const said = new Set<string>();
  if (one.kind === 'S' && removal?.caution) said.add(removal.caution);
  if (one.kind === 'I') {
    const energy = log.isolation.get(one.thingId)?.energy ?? 'other';
    said.add(ENERGY[energy] ?? '');
  }
  if (one.kind === 'C2') said.add('Running machine: keep clear of what turns, is hot or under pressure.');
  if (one.kind === 'S' && removal) {
    const text = [
      removal.title,
      removal.typed,
      ...(at.content[node]?.parts.map((part) => part.name) ?? []),
    ].join(' ');
    for (const [pattern, caution] of WORDS) if (pattern.test(text)) said.add(caution);
  }
  said.delete('');
  return [...said];
}
