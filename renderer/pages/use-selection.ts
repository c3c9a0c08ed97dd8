import { useState } from 'react';

/** Photos that are selected, in a list that is shown in this order. What is not shown any more is selected no longer. */
export function useSelection(order: readonly string[]) {
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set());
  const [atId, setAtId] = useState<string | null>(null);
  const [anchor, setAnchor] = useState<string | null>(null);
  const shown = new Set(order);
  const selected = new Set([...picked].filter((id) => shown.has(id)));
  const upTo = (id: string): Set<string> => {
    const from = order.indexOf(anchor ?? atId ?? id);
    const to = order.indexOf(id);
    const [low, high] = [Math.max(0, Math.min(from, to)), Math.max(from, to)];
    return new Set(order.slice(low, high + 1));
  };
  return {
    selected,
    atId,
    /** "only": this one; "add": this one too, or no longer; "range": all up to this one. */
    touch: (id: string, how: 'only' | 'add' | 'range') => {
      setAtId(id);
      if (how === 'range') {
        setPicked(upTo(id));
        return;
      }
      setAnchor(id);
      const next = new Set(how === 'add' ? selected : []);
      if (how === 'add' && selected.has(id)) next.delete(id);
      else next.add(id);
      setPicked(next);
    },
    goTo: (id: string, range: boolean) => {
      if (range) setPicked(upTo(id));
      else setAnchor(id);
      setAtId(id);
    },
    all: () => setPicked(new Set(order)),
    none: () => setPicked(new Set()),
  };
}
