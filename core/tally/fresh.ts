import type { Row } from '../model/tables.ts';

/**
 * Bought pieces in hand, unused and used once. A bought bolt that came off again is still a bought one, but no longer
 * new: where only a new one will do, it does not.
 */
export interface Fresh {
  unused: number;
  used: number;
  /** Used ones that are away or looked for: they come back as used ones. */
  usedElsewhere: number;
  /** Fitted as new before any came, by their times: somebody wrote the fitting down with an earlier time. */
  owed: number;
}

export function noFresh(): Fresh {
  return { unused: 0, used: 0, usedElsewhere: 0, owed: 0 };
}

/** Books one move, to be called in the order of time. Into a hole go the unused ones first, into the bin the used ones. */
export function followFresh(fresh: Fresh, move: Row<'move'>): void {
  if (!(move.fresh || move.src === 'supply') || (move.src === 'stow' && move.dst === 'stow')) return;
  let qty = move.qty;
  if (move.src === 'stow') {
    const order = move.dst === 'hole' ? (['unused', 'used'] as const) : (['used', 'unused'] as const);
    for (const which of order) {
      const take = Math.min(qty, fresh[which]);
      fresh[which] -= take;
      if (which === 'used' && (move.dst === 'away' || move.dst === 'unknown')) fresh.usedElsewhere += take;
      qty -= take;
    }
    if (move.dst === 'hole') fresh.owed += qty;
  } else if (move.dst === 'stow') {
    if (move.src === 'hole') fresh.used += qty;
    else {
      const back = move.src === 'supply' || move.src === 'stock' ? 0 : Math.min(qty, fresh.usedElsewhere);
      fresh.usedElsewhere -= back;
      fresh.used += back;
      qty -= back;
      const paid = Math.min(qty, fresh.owed);
      fresh.owed -= paid;
      fresh.unused += qty - paid;
    }
  }
}
