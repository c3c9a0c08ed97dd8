import { common } from '../texts/common.ts';

export interface StatusProps {
  /** What was refused, or could not be done, in one sentence; null when all is well. */
  readonly refusal?: string | null;
  /** Changes on their way to the disk. */
  readonly unsaved?: number;
  /** Something that may be undone at once. */
  readonly undo?: { readonly say: string; readonly onUndo: () => void } | null;
  /** Long work under way. */
  readonly progress?: { readonly say: string; readonly onCancel?: (() => void) | undefined } | null;
  readonly onClose?: () => void;
}

/** The one line at the foot of the window: refusals first, then long work, then what is not saved yet. */
export function Status({ refusal = null, unsaved = 0, undo = null, progress = null, onClose }: StatusProps) {
  if (refusal !== null)
    return (
      <div className="status" role="alert">
        <p>{refusal}</p>
        {onClose !== undefined && (
          <button type="button" onClick={onClose}>
            {common.close}
          </button>
        )}
      </div>
    );
  const say = progress?.say ?? (unsaved > 0 ? common.unsaved(unsaved) : undo?.say);
  const act = actOf(progress, unsaved, undo);
  return (
    <div role="status">
      {say !== undefined && (
        <div className="status quiet">
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
  undo: StatusProps['undo'],
): { readonly label: string; readonly on: () => void } | null {
  if (progress)
    return progress.onCancel === undefined ? null : { label: common.cancel, on: progress.onCancel };
  return unsaved === 0 && undo ? { label: common.undo, on: undo.onUndo } : null;
}
