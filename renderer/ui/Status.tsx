import { common } from '../texts/common.ts';

export interface StatusTurn {
  readonly say: string;
  readonly label: string;
  readonly onTurn: () => void;
}

export interface StatusProps {
  /** What was refused, or could not be done, in one sentence; null when all is well. */
  readonly refusal?: string | null;
  /** Changes on their way to the disk. */
  readonly unsaved?: number;
  /** The last thing done or taken back, and the way to turn it round. */
  readonly turn?: StatusTurn | null;
  /** Long work under way. */
  readonly progress?: { readonly say: string; readonly onCancel?: (() => void) | undefined } | null;
  readonly onClose?: () => void;
}

/**
 * The one line of news: refusals first, then long work, then what is not saved yet. It has a place of its own on every
 * screen and covers nothing; only what passes by itself in a moment lies over the page where there is no such place.
 */
export function Status({ refusal = null, unsaved = 0, turn = null, progress = null, onClose }: StatusProps) {
  if (refusal !== null)
    return (
      <div className="status refused" role="alert">
        <p>{refusal}</p>
        {onClose !== undefined && (
          <button type="button" onClick={onClose}>
            {common.close}
          </button>
        )}
      </div>
    );
  const say = progress?.say ?? (unsaved > 0 ? common.unsaved(unsaved) : turn?.say);
  const act = actOf(progress, unsaved, turn);
  return (
    <div className="news" role="status">
      {say !== undefined && (
        <div className={progress === null && turn === null ? 'status quiet passing' : 'status quiet'}>
          <p>{say}</p>
          {act !== null && (
            <button type="button" onClick={act.on}>
              {act.label}
            </button>
          )}
        </div>
      )}
    </div>
  );
}

function actOf(
  progress: StatusProps['progress'],
  unsaved: number,
  turn: StatusProps['turn'],
): { readonly label: string; readonly on: () => void } | null {
  if (progress)
    return progress.onCancel === undefined ? null : { label: common.cancel, on: progress.onCancel };
  return unsaved === 0 && turn ? { label: turn.label, on: turn.onTurn } : null;
}
