export type Severity = 'stop' | 'warn' | 'note';
export type FindingCode =
  | 'fastener.short'
  | 'fastener.left-over'
  | 'fastener.loose'
  | 'fastener.damaged'
  | 'fastener.look-alike'
  | 'hole.blocked'
  | 'hole.empty'
  | 'part.left-over'
  | 'part.missing'
  | 'part.place'
  | 'part.away'
  | 'part.no-stow'
  | 'item.unaccounted'
  | 'count.differs'
  | 'renew.not-in-hand'
  | 'joint.no-seal'
  | 'torque.none'
  | 'torque.off'
  | 'torque.past-proof'
  | 'torque.misfit'
  | 'torque.later'
  | 'measure.missing'
  | 'measure.off'
  | 'cure.wait'
  | 'temporary.in-place'
  | 'temporary.hold'
  | 'connection.open'
  | 'mate.swapped'
  | 'fluid.open'
  | 'fluid.amount'
  | 'isolation.late'
  | 'order.cycle'
  | 'photo.none'
  | 'photo.blurred'
  | 'marker.unbound'
  | 'as-found.open'
  | 'handover'
  | 'gate.open';

export interface Acceptance {
  readonly personId: string | null;
  readonly why: string;
  readonly at: number;
}

/** One thing wrong, missing or doubtful. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Thing ids, the first one named in the sentence; bags, counts and what is to be done where they are the subject. */
  readonly subjects: readonly string[];
  readonly sentence: string;
  /** What clears it, as a sentence. */
  readonly clears: string;
  /** The step it lies on; null = the job as a whole. */
  readonly stepId: string | null;
  /** Steps that may not be done while it is open, beside those above `stepId`: ways in that would be closed. */
  readonly holds: readonly string[];
  /** The last step at which it can be mended; null = before the job is closed. */
  readonly latestStep: string | null;
  /** The same for the same trouble, whatever the facts. At most 300 characters. */
  readonly key: string;
  /** Changes with the facts: an acceptance holds for one digest. */
  readonly digest: string;
  readonly accepted: Acceptance | null;
}
