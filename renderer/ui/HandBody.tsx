import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { common } from '../texts/common.ts';

/** How much of the last line may be hidden before it counts, px: half a rule, a rounded height. */
const SLACK = 4;

interface Reach {
  /** There is more than the place shows: the sign has its room, so that nothing jumps as it comes and goes. */
  readonly rolls: boolean;
  /** More follows below what is seen. */
  readonly more: boolean;
}

/**
 * The text of the column at the right, above its keys. It ends where the keys begin and rolls by itself; while more
 * follows a rule with a word says so. Below 960 px the page itself rolls, and there is no sign.
 */
export function HandBody({ children }: { readonly children: ReactNode }) {
  const body = useRef<HTMLDivElement | null>(null);
  const [reach, setReach] = useState<Reach>({ rolls: false, more: false });
  const measure = () => {
    const at = body.current;
    if (at === null) return;
    const own = ['auto', 'scroll'].includes(getComputedStyle(at).overflowY);
    // By the last thing's box: the large figure is drawn taller than its line, and would count as more.
    const end = (at.lastElementChild ?? at).getBoundingClientRect().bottom;
    const below = end - at.getBoundingClientRect().bottom;
    const rolls = own && below + at.scrollTop > SLACK;
    const more = rolls && below > SLACK;
    setReach((old) => (old.rolls === rolls && old.more === more ? old : { rolls, more }));
  };
  useLayoutEffect(() => {
    const at = body.current;
    if (at === null) return undefined;
    const watch = new ResizeObserver(measure);
    watch.observe(at);
    for (const child of at.children) watch.observe(child);
    measure();
    return () => watch.disconnect();
  });
  return (
    <>
      <div className="hand-body" ref={body} onScroll={measure}>
        {children}
      </div>
      {reach.rolls && (
        <p className={reach.more ? 'hand-more' : 'hand-more end'} aria-hidden="true">
          {common.moreBelow}
        </p>
      )}
    </>
  );
}
