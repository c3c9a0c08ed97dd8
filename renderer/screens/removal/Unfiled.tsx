import { photos as sayPhotos } from '../../texts/photos.ts';
import { removal as say } from '../../texts/removal.ts';
import { PhotoWord } from '../photos/PhotoWord.tsx';
import { AddKey } from '../../ui/AddKey.tsx';
import { Key } from '../../ui/Key.tsx';

/** A photo that belongs to no removal yet. */
export interface Thumb {
  readonly id: string;
  readonly src: string;
  /** "10:44", or the file's name where the time is not known. */
  readonly taken: string;
  /** Why it is not filed, in words. */
  readonly why: string;
  readonly blurred: boolean;
  readonly dark: boolean;
}

export interface UnfiledData {
  readonly count: number;
  /** Number of the removal since which they were taken; 0 when there is none before. */
  readonly since: number;
  /** All of them; the thumbs may be fewer. */
  readonly ids: readonly string[];
  readonly thumbs: readonly Thumb[];
}

interface UnfiledProps {
  readonly unfiled: UnfiledData;
  readonly number: number;
  readonly onTakeAll: () => void;
  readonly onTakeOne: (id: string) => void;
  readonly onAddPhotos: (files: readonly File[]) => void;
}

/** Photos come before the log in real life: those since the last removal are offered to this one. */
export function Unfiled({ unfiled, number, onTakeAll, onTakeOne, onAddPhotos }: UnfiledProps) {
  if (unfiled.count === 0)
    return (
      <section className="unfiled none">
        <p>{sayPhotos.addHow}</p>
        <AddKey onAddPhotos={onAddPhotos} />
      </section>
    );
  return (
    <section className="unfiled">
      <p className="unfiled-count">
        <b className="num">{unfiled.count}</b> <span>{say.unfiled(unfiled.since)}</span>
      </p>
      <ul className="thumbs">
        {unfiled.thumbs.map((thumb) => (
          <li key={thumb.id}>
            <button
              type="button"
              className="thumb"
              onClick={() => onTakeOne(thumb.id)}
              aria-label={say.takeOne(thumb.taken, number)}
              title={`${say.takeOne(thumb.taken, number)}. ${thumb.why}`}
            >
              <img src={thumb.src} alt="" loading="lazy" />
              <span className="plate">{thumb.taken}</span>
              {(thumb.blurred || thumb.dark) && (
                <span className="thumb-word">
                  <PhotoWord what={thumb.blurred ? 'blurred' : 'dark'} />
                </span>
              )}
            </button>
          </li>
        ))}
      </ul>
      <div className="unfiled-keys">
        <Key onPress={onTakeAll} hint={say.takeAllHint} shortcut="Alt+T">
          {say.takeAll(number)}
        </Key>
        <AddKey onAddPhotos={onAddPhotos} />
      </div>
    </section>
  );
}
