import { useRef } from 'react';
import { photos as sayPhotos } from '../texts/photos.ts';
import { Key } from './Key.tsx';

/** Opens the system's own file chooser. */
export function AddKey({ onAddPhotos }: { readonly onAddPhotos: (files: readonly File[]) => void }) {
  const chooser = useRef<HTMLInputElement>(null);
  return (
    <>
      <Key onPress={() => chooser.current?.click()}>{sayPhotos.add}</Key>
      <input
        ref={chooser}
        type="file"
        className="heard-only"
        tabIndex={-1}
        aria-hidden="true"
        multiple
        // What it is, is told by the file itself; the list only sorts the chooser.
        accept="image/*,.heic,.heif,.avif"
        onChange={(event) => {
          onAddPhotos([...(event.currentTarget.files ?? [])]);
          event.currentTarget.value = '';
        }}
      />
    </>
  );
}
