import { sharpnessOfAll } from '../model/shots.ts';
import type { Draft } from './draft.ts';
import { blockedFindings, openFindings, temporaryFindings } from './findings-open.ts';
import { partFindings, photoFindings } from './findings-parts.ts';
import { damageFindings, emptyFindings, holeFindings, pieceFindings } from './findings-pieces.ts';
import { lateIsolations, valueFindings } from './findings-values.ts';
import type { Situation } from './situation.ts';
import { titleOf } from './situation.ts';

/** Every finding of a job, unplaced. */
export function draftsOf(at: Situation): Draft[] {
  return [
    ...openFindings(at),
    ...blockedFindings(at),
    ...temporaryFindings(at),
    ...holeFindings(at),
    ...pieceFindings(at),
    ...damageFindings(at),
    ...emptyFindings(at),
    ...partFindings(at),
    ...valueFindings(at),
    ...lateIsolations(at),
    ...ringFindings(at),
    ...laterNotes(at),
    ...photoFindings(at),
    ...asFoundNotes(at),
    ...markerNotes(at),
    ...handoverNotes(at),
  ];
}

function ringFindings(at: Situation): Draft[] {
  return at.ordered.blocks.map((block) => ({
    code: 'order.cycle' as const,
    severity: 'stop' as const,
    subjects: block.map((node) => at.graph.nodes[node]?.thingId ?? ''),
    sentence: `These steps wait for each other in a ring: ${block.map((node) => titleOf(at.graph, node) || `removal ${(at.graph.nodes[node]?.index ?? 0) + 1}`).join(', ')}.`,
    clears: 'Loosen one of the needs or orders between them.',
    node: block[0] ?? -1,
  }));
}

function laterNotes(at: Situation): Draft[] {
  return [...at.graph.final].flatMap(([setId, node]) => {
    if (at.progress[node]?.done || at.past[node] === 1) return [];
    const set = at.graph.log.set.get(setId);
    return [
      {
        code: 'torque.later' as const,
        severity: 'note' as const,
        subjects: [setId],
        sentence: `${titleOf(at.graph, node)} is still due.`,
        clears: `Tighten it finally ${set?.laterWhen ?? ''}.`.replace(' .', '.'),
        node,
      },
    ];
  });
}

function asFoundNotes(at: Situation): Draft[] {
  return at.state.asFound
    .filter((row) => row.closedWhy === null && row.kind !== 'reading')
    .map((row) => ({
      code: 'as-found.open' as const,
      severity: 'note' as const,
      subjects: [row.id],
      sentence: `As found: ${row.text}`,
      clears: 'Say what became of it.',
      node: -1,
    }));
}

function markerNotes(at: Situation): Draft[] {
  const unbound = at.state.marker.filter((marker) => marker.thingId === null && marker.togetherId === null);
  const photos = new Map<string, number>();
  for (const marker of unbound) photos.set(marker.photoId, (photos.get(marker.photoId) ?? 0) + 1);
  const sharpness = sharpnessOfAll(at.state.original);
  const blurred = at.state.photo.filter((photo) => sharpness.get(photo.originalId) === 'blurred');
  return [
    ...[...photos].map(([photoId, count]) => ({
      code: 'marker.unbound' as const,
      severity: 'note' as const,
      subjects: [photoId],
      sentence: `${count} ${count === 1 ? 'mark stands' : 'marks stand'} for nothing on a photo.`,
      clears: 'Say which hole, part or connection each stands for.',
      node: -1,
    })),
    ...blurred.map((photo) => ({
      code: 'photo.blurred' as const,
      severity: 'note' as const,
      subjects: [photo.id],
      sentence: `${photo.fileName || 'A photo'} is blurred against the others of this camera.`,
      clears: 'Take it again while it can be repeated.',
      node: photo.removalId === null ? -1 : at.graph.stepOfRemoval(photo.removalId),
    })),
  ];
}

function handoverNotes(at: Situation): Draft[] {
  return at.state.halt
    .filter((halt) => halt.seenAt === null)
    .map((halt) => ({
      code: 'handover' as const,
      severity: 'note' as const,
      subjects: [halt.id],
      sentence: `Work was stopped: ${halt.note || 'no note was left'}`,
      clears: 'Read it before going on.',
      node: -1,
    }));
}
