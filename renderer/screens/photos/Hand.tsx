import { useRef } from 'react';
import { gallery as say } from '../../texts/gallery.ts';
import { AddKey } from '../../ui/AddKey.tsx';
import { Choice } from '../../ui/Choice.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import type { PhotosScreenProps } from './PhotosScreen.tsx';

/** What is selected and what may become of it; without a selection what the screen shows. */
export function Hand(props: PhotosScreenProps) {
  const some = props.selected.size > 0;
  return (
    <section className="hand gallery-hand">
      {some ? (
        <BigNumber value={String(props.selected.size)} at>
          <span>{say.selected}</span> <span>{say.ofAll(props.shown)}</span>
        </BigNumber>
      ) : (
        <BigNumber value={String(props.shown)}>{say.photos(props.shown).replace(/^\d+ /, '')}</BigNumber>
      )}
      {some ? <Selected {...props} /> : <Filters {...props} />}
      {some ? <SelectedKeys {...props} /> : <RestKeys {...props} />}
    </section>
  );
}

function Filters({ filters, filter, onFilter, said, onSaidAway }: PhotosScreenProps) {
  return (
    <>
      {said.length > 0 && (
        <section className="gallery-said">
          <h2>{say.said}</h2>
          <ul>
            {said.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <Key onPress={onSaidAway}>{say.sayAway}</Key>
        </section>
      )}
      <nav className="gallery-filters" aria-label={say.show}>
        {filters.map((row) => (
          <button
            key={row.id}
            type="button"
            aria-current={row.id === filter ? 'true' : undefined}
            onClick={() => onFilter(row.id)}
          >
            <span>{row.label}</span> <b className="num">{row.count}</b>
          </button>
        ))}
      </nav>
      <p className="cap gallery-how">{say.how}</p>
    </>
  );
}

function Selected(props: PhotosScreenProps) {
  const field = useRef<HTMLInputElement>(null);
  return (
    <>
      <form
        className="gallery-file"
        onSubmit={(event) => {
          event.preventDefault();
          props.onFile();
        }}
      >
        <label className="field">
          <span className="label">{say.file}</span>
          <input
            ref={field}
            inputMode="numeric"
            className="num"
            value={props.typed}
            placeholder={say.fileExample}
            onChange={(event) => props.onType(event.currentTarget.value)}
          />
        </label>
        <Key
          look={props.typed === '' ? 'plain' : 'go'}
          submits
          onPress={props.onFile}
          hint="Enter"
          off={props.typed === ''}
        >
          {say.fileGo(props.typed)}
        </Key>
      </form>
      <div>
        <p className="cap">{say.role}</p>
        <Choice
          name={say.role}
          value={props.role}
          onChange={props.onRole}
          options={(['as found', 'as refitted', 'other'] as const).map((value) => ({
            value,
            label: say.roles[value],
          }))}
        />
      </div>
    </>
  );
}

function SelectedKeys(props: PhotosScreenProps) {
  return (
    <div className="foot keys">
      <Key onPress={props.onMake} hint="M">
        {say.make}
      </Key>
      <Key onPress={props.onUnfile} hint="U">
        {say.unfile}
      </Key>
      <Key onPress={props.onLook} hint="L">
        {say.look}
      </Key>
      <Key onPress={props.onAway} hint="Del" shortcut="Delete">
        {say.away}
      </Key>
      <Key onPress={props.onSelectAll} hint="Ctrl A" shortcut="Control+A">
        {say.all}
      </Key>
      <Key onPress={props.onSelectNone} hint="Esc" shortcut="Escape">
        {say.nothing}
      </Key>
    </div>
  );
}

function RestKeys(props: PhotosScreenProps) {
  return (
    <div className="foot keys">
      {props.unfiled > 0 && (
        <Key look="go" onPress={props.onMakeAll} hint="M">
          {say.makeAll(props.unfiled)}
        </Key>
      )}
      <AddKey onAddPhotos={props.onAddPhotos} />
      {props.shown > 0 && (
        <Key onPress={props.onSelectAll} hint="Ctrl A" shortcut="Control+A">
          {say.all}
        </Key>
      )}
    </div>
  );
}
