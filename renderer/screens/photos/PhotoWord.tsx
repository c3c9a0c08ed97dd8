import { gallery as say } from '../../texts/gallery.ts';

/** What is wrong with a shot, as a shape and a word: waves for blurred, a covered disc for very dark. */
export function PhotoWord({ what }: { readonly what: 'blurred' | 'dark' }) {
  return (
    <span className="plate photo-word">
      <svg viewBox="0 0 18 18" aria-hidden="true">
        {what === 'blurred' ? (
          <path
            d="M1 5q2.7-3 5.3 0t5.4 0 5.3 0M1 9.5q2.7-3 5.3 0t5.4 0 5.3 0M1 14q2.7-3 5.3 0t5.4 0 5.3 0"
            fill="none"
            stroke="currentColor"
            strokeWidth="1.8"
          />
        ) : (
          <>
            <circle cx="9" cy="9" r="7.5" fill="none" stroke="currentColor" strokeWidth="1.8" />
            <path d="M2 9a7 7 0 1 0 14 0a9 4 0 0 1-14 0Z" fill="currentColor" />
          </>
        )}
      </svg>
      {what === 'blurred' ? say.blurred : say.dark}
    </span>
  );
}
