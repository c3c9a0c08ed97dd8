import { lookedAt as say } from '../../texts/looked-at.ts';

/** What a check looked at, a line each: that nothing holds it is only worth what was counted. */
export function LookedAt({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="looked-at" aria-label={say.title}>
      <h2>{say.title}</h2>
      <ul className="step-did">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
