import { useEffect } from 'react';

const STOPS = 'a[href], button, input, select, summary, textarea, [tabindex="0"]';

/** What Tab would stop at inside an element, in its order. */
const stopsIn = (place: Element): HTMLElement[] =>
  [...place.querySelectorAll<HTMLElement>(STOPS)].filter(
    (one) => one.tabIndex >= 0 && !one.matches(':disabled') && one.getClientRects().length > 0,
  );

/** Where the focus was: everything round it up to its screen, with its number among the stops in there. */
interface Left {
  readonly at: HTMLElement;
  readonly around: readonly { readonly place: Element; readonly index: number }[];
  readonly name: string;
}

const LARGE_KEY = 'main .foot .key.go';

/** What a control is called, the same from screen to screen. */
const nameOf = (one: HTMLElement): string =>
  one.matches(LARGE_KEY)
    ? LARGE_KEY
    : (one.dataset['removal'] ?? one.getAttribute('aria-label') ?? one.textContent);

function leftAt(at: HTMLElement): Left {
  const main = at.closest('main');
  const stops = main === null ? [] : stopsIn(main);
  const around: { place: Element; index: number }[] = [];
  for (let place = main && at.parentElement; place !== null; place = place.parentElement) {
    const within = place;
    around.push({ place, index: stops.filter((one) => within.contains(one)).indexOf(at) });
    if (place === main) break;
  }
  return { at, around, name: nameOf(at) };
}

/**
 * The nearest thing left; in no smaller place than the whole screen the large key, since Enter means that there. On
 * another screen what is called the same.
 */
function nearest({ around, name }: Left): HTMLElement | null {
  for (const { place, index } of around) {
    if (!place.isConnected) continue;
    const largeKey = document.querySelector<HTMLElement>(`${LARGE_KEY}:enabled`);
    if (place.matches('main') && largeKey !== null) return largeKey;
    const stops = stopsIn(place);
    const next = stops[Math.min(Math.max(0, index), stops.length - 1)];
    if (next) return next;
  }
  return name === '' ? null : (stopsIn(document.body).find((one) => nameOf(one) === name) ?? null);
}

/**
 * A key may take away what it was pressed on: a line that is answered, a photo that is filed, a step that is done. The
 * focus then goes to what is nearest, never nowhere. A pointer lets go of it, so that keys mean the screen again.
 */
export function useKeptFocus(): void {
  useEffect(() => {
    let left: Left | null = null;
    let byPointer = false;
    let waits = false;
    let frame = 0;
    const onFocus = ({ target }: FocusEvent) => {
      left = target instanceof HTMLElement ? leftAt(target) : null;
      waits = false;
    };
    const look = () => {
      frame = 0;
      if (left === null || document.activeElement !== document.body) return;
      if (byPointer) {
        // A pointer let go of it for good: the next key is for the screen, whatever changes on it.
        left = null;
        return;
      }
      const isOff = left.at.matches(':disabled');
      // What is still there was let go of by intention.
      if (left.at.isConnected && !isOff && !waits) return;
      // The large key is off only until the next step comes, or it is wanted again.
      waits = left.at.isConnected && isOff && left.name === LARGE_KEY;
      if (waits) return;
      const next = left.at.isConnected && !isOff ? left.at : nearest(left);
      left = null;
      next?.focus();
    };
    const onInput = ({ type }: Event) => {
      // What the pointer took away is the pointer's, also where a key follows before it was looked at.
      if (frame !== 0) {
        cancelAnimationFrame(frame);
        look();
      }
      byPointer = type === 'pointerdown';
    };
    const watch = new MutationObserver(() => {
      if (left !== null && frame === 0) frame = requestAnimationFrame(look);
    });
    watch.observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
    document.addEventListener('focusin', onFocus);
    const inputs = ['pointerdown', 'keydown'];
    for (const type of inputs) document.addEventListener(type, onInput, true);
    return () => {
      watch.disconnect();
      cancelAnimationFrame(frame);
      document.removeEventListener('focusin', onFocus);
      for (const type of inputs) document.removeEventListener(type, onInput, true);
    };
  }, []);
}
