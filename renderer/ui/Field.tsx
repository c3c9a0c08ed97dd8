import { type KeyboardEvent, useId } from 'react';

export interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onDone?: () => void;
  /** An example, never the label. */
  readonly example?: string;
  readonly lines?: boolean;
  /** One line of words that may be longer than the field: it wraps. Enter ends it. */
  readonly wraps?: boolean;
  /** Why it cannot be taken as it stands: what was expected, what came. */
  readonly refused?: string | undefined;
  readonly numeric?: boolean;
  /** Figures, fractions and units, as the trade writes them: in the sans, with a whole keyboard. */
  readonly figures?: boolean;
  readonly first?: boolean;
  /** A day is chosen by the system's own calendar. */
  readonly type?: 'text' | 'date';
}

/** A labelled field. What people write stands in the serif. */
export function Field(props: FieldProps) {
  const {
    label,
    value,
    onChange,
    onDone,
    example,
    lines = false,
    wraps = false,
    refused,
    numeric = false,
    figures = false,
    first,
    type = 'text',
  } = props;
  const id = useId();
  const shared = {
    id,
    value,
    className: numeric || figures ? undefined : 'said',
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
    onBlur: onDone,
    placeholder: example,
    autoFocus: first,
    'aria-invalid': refused === undefined ? undefined : true,
    'aria-describedby': refused === undefined ? undefined : `${id}-why`,
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {lines ? (
        <textarea {...shared} rows={2} />
      ) : wraps ? (
        <textarea {...shared} className="said wraps" rows={1} onKeyDown={endAtEnter} />
      ) : (
        <input {...shared} type={type} inputMode={numeric ? 'decimal' : undefined} />
      )}
      {refused !== undefined && (
        <span className="why" id={`${id}-why`}>
          {refused}
        </span>
      )}
    </div>
  );
}

function endAtEnter(event: KeyboardEvent<HTMLTextAreaElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  event.currentTarget.blur();
}

export interface WrittenProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onDone?: () => void;
  /** Enter ended it: where typing goes on. */
  readonly onEnter?: () => void;
  readonly placeholder: string;
  readonly className?: string;
}

/** A name or a note, written straight onto the page. Enter ends it, Shift and Enter begins a line. */
export function Written(props: WrittenProps) {
  const { label, value, onChange, onDone, onEnter, placeholder, className = '' } = props;
  return (
    <textarea
      className={`written said ${className}`}
      aria-label={label}
      rows={1}
      value={value}
      placeholder={placeholder}
      onChange={(event) => onChange(event.target.value)}
      onBlur={onDone}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key !== 'Enter' || event.shiftKey) return;
        event.preventDefault();
        event.currentTarget.blur();
        onEnter?.();
      }}
    />
  );
}
