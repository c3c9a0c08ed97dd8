import { removal as say } from '../../texts/removal.ts';

/** In which order the holes of a casting are undone. */
export interface UndoingData {
  /** Numbers of the holes, the first to undo first. */
  readonly order: readonly string[];
  readonly says: string;
  /** Where the gaps suggest that a hole is not marked; "" where they do not. */
  readonly hint: string;
}

/** Said before the first one is undone; the wedges on the photo say the same. */
export function Undoing({ undoing }: { readonly undoing: UndoingData }) {
  return (
    <div className="undoing">
      <h2>{say.undoingTitle}</h2>
      <ol className="undoing-order" aria-label={say.undoingOrder}>
        {undoing.order.map((hole) => (
          <li key={hole} className="num">
            {hole}
          </li>
        ))}
      </ol>
      <p>{undoing.says}</p>
      {undoing.hint !== '' && <p>{undoing.hint}</p>}
      <p className="cap">{say.undoingMaker}</p>
    </div>
  );
}
