import type { Account } from '../../core/model/fastener.ts';
import { expectedIn } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

/**
 * Random histories of what can happen to pieces, played twice: in the rows of a job, and with every piece followed by
 * itself. The second is the check: it knows where each piece is and needs no books.
 */
type Place = Exclude<Account, 'supply'>;
interface Piece {
  readonly set: number;
  readonly old: boolean;
  /** Never in a hole. */
  unused: boolean;
  everOut: boolean;
  place: Place;
  bag: number;
  hole: Hole | null;
  search: string | null;
}
interface Hole {
  readonly set: number;
  readonly positionId: string;
  /** Holes that want a piece: emptied ones. */
  opened: boolean;
}

export const OPS = [
  'off',
  'refit',
  'again',
  'buy',
  'miss',
  'find',
  'gone',
  'scrap',
  'stock',
  'send',
  'back',
  'bag',
] as const;
export type Op = (typeof OPS)[number];
const SIZES = [4, 3, 2];

export class Bench {
  readonly job = new TallyJob();
  readonly bags = [this.job.bag('1'), this.job.bag('2')];
  /** Sets 0 and 1 are alike and share a pool; set 2 has its own places and must be new. */
  readonly sets = [this.job.set(4), this.job.set(3), this.job.set(2, { ownPlace: true, renew: 'must' })];
  readonly holes: Hole[] = this.sets.flatMap((set, i) =>
    set.holes.map((positionId) => ({ set: i, positionId, opened: false })),
  );
  readonly pieces: Piece[] = this.holes.map((hole) => ({
    set: hole.set,
    old: true,
    unused: false,
    everOut: false,
    place: 'hole',
    bag: 0,
    hole,
    search: null,
  }));

  private readonly named: boolean;

  /** Named: every move says which hole it means, and pieces may go into a hole of the other set of the pool. */
  constructor(named: boolean) {
    this.named = named;
  }

  private pick<T>(list: readonly T[], n: number): T | undefined {
    return list.length === 0 ? undefined : list[n % list.length];
  }

  private in(place: Place): Piece[] {
    return this.pieces.filter((piece) => piece.place === place);
  }

  private book(
    piece: Piece,
    to: Place,
    cause: Parameters<TallyJob['move']>[0]['cause'] & string,
    bag = piece.bag,
  ) {
    const set = this.sets[piece.set] as { id: string; specId: string };
    const hole = piece.hole;
    this.job.move({
      homeSetId: set.id,
      specId: set.specId,
      src: piece.place,
      dst: to,
      cause,
      fresh: piece.unused,
      srcStowId: piece.place === 'stow' ? (this.bags[piece.bag] as string) : null,
      dstStowId: to === 'stow' ? (this.bags[bag] as string) : null,
      positionId: this.named && hole ? hole.positionId : null,
      countId: piece.search,
    });
    piece.place = to;
    piece.bag = bag;
  }

  play(op: Op, n: number, m: number): void {
    const hand = this.in('stow');
    switch (op) {
      case 'off': {
        const piece = this.pick(
          this.pieces.filter((p) => p.place === 'hole' && p.old && !p.everOut),
          n,
        );
        if (!piece?.hole) return;
        piece.hole.opened = true;
        piece.everOut = true;
        this.book(piece, 'stow', 'came off', m % 2);
        piece.hole = null;
        return;
      }
      case 'refit': {
        const piece = this.pick(hand, n);
        if (!piece) return;
        const taken = new Set(this.pieces.map((p) => p.hole));
        const fits = (hole: Hole) => hole.set === piece.set || (this.named && hole.set < 2 && piece.set < 2);
        const hole = this.pick(
          this.holes.filter((h) => h.opened && !taken.has(h) && fits(h)),
          m,
        );
        if (!hole) return;
        piece.hole = hole;
        this.book(piece, 'hole', 'refitted');
        piece.unused = false;
        return;
      }
      case 'again': {
        const piece = this.pick(
          this.in('hole').filter((p) => p.everOut || !p.old),
          n,
        );
        if (!piece) return;
        this.book(piece, 'stow', 'came off again', m % 2);
        piece.hole = null;
        return;
      }
      case 'buy': {
        const set = n % SIZES.length;
        this.job.buy(this.sets[set] as { id: string; specId: string }, 1, this.bags[m % 2] as string);
        this.pieces.push({
          set,
          old: false,
          unused: true,
          everOut: false,
          place: 'stow',
          bag: m % 2,
          hole: null,
          search: null,
        });
        return;
      }
      case 'miss': {
        const piece = this.pick(hand, n);
        if (!piece) return;
        const stowId = this.bags[piece.bag] as string;
        const expected = expectedIn(this.job.state, stowId);
        piece.search = this.job.counted({ stowId, expected, counted: expected - 1 }).id;
        this.book(piece, 'unknown', 'counted');
        return;
      }
      case 'find':
      case 'gone': {
        const piece = this.pick(this.in('unknown'), n);
        if (!piece?.search) return;
        this.job.change('counting', piece.search, { ended: op === 'find' ? 'found' : 'accepted' });
        this.book(piece, op === 'find' ? 'stow' : 'lost', op === 'find' ? 'found' : 'written off');
        piece.search = null;
        return;
      }
      case 'scrap':
      case 'stock':
      case 'send': {
        const piece = this.pick(hand, n);
        const to = { scrap: 'scrap', stock: 'stock', send: 'away' } as const;
        if (piece)
          this.book(piece, to[op], op === 'send' ? 'sent out' : op === 'scrap' ? 'scrapped' : 'to stock');
        return;
      }
      case 'back': {
        const piece = this.pick(this.in('away'), n);
        if (piece) this.book(piece, 'stow', 'came back', m % 2);
        return;
      }
      case 'bag': {
        const piece = this.pick(hand, n);
        if (piece) this.book(piece, 'stow', 'moved', 1 - piece.bag);
        return;
      }
    }
  }

  /** The count of one set, from the pieces themselves. */
  seen(set: number) {
    const mine = this.pieces.filter((piece) => piece.set === set);
    const at = (place: Place) => mine.filter((piece) => piece.place === place).length;
    const back = mine.filter((piece) => piece.place === 'hole' && (piece.everOut || !piece.old)).length;
    const open = this.holes.filter((hole) => hole.set === set && hole.opened);
    const filled = open.filter((hole) => this.pieces.some((piece) => piece.hole === hole)).length;
    const newInBag = mine.filter((piece) => piece.place === 'stow' && piece.unused).length;
    const mustRenew = set === 2 ? at('stow') - newInBag : 0;
    return {
      out: mine.filter((piece) => piece.everOut).length,
      got: mine.filter((piece) => !piece.old).length,
      inBag: at('stow'),
      away: at('away'),
      backIn: back,
      scrapped: at('scrap'),
      lost: at('lost'),
      unknown: at('unknown'),
      toStock: at('stock'),
      newInBag,
      mustRenew,
      usable: at('stow') - mustRenew,
      filled,
      toFill: open.length - filled,
      short: Math.max(0, open.length - filled - (at('stow') - mustRenew)),
    };
  }
}
