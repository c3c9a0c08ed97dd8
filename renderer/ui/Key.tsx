import type { ReactNode, Ref } from 'react';

export interface KeyProps {
  readonly children: ReactNode;
  readonly onPress: () => void;
  /** "go" is the next thing to do: one on a screen. "digit" is a key of the number pad. */
  readonly look?: 'plain' | 'go' | 'digit';
  readonly large?: boolean;
  readonly upright?: boolean;
  readonly off?: boolean;
  /** The keyboard's key, shown in the button. */
  readonly hint?: string;
  /** In the form that ARIA wants, where it differs from the hint: "Control+Z". */
  readonly shortcut?: string;
  readonly label?: string;
  readonly className?: string;
  readonly first?: boolean;
  readonly submits?: boolean;
  /** Set where the key stays down. */
  readonly pressed?: boolean;
  readonly ref?: Ref<HTMLButtonElement>;
}

/** Something that can be pressed. It always carries a word. */
export function Key(props: KeyProps) {
  const { children, onPress, look = 'plain', hint } = props;
  const name = [
    'key',
    look === 'plain' ? '' : look,
    props.large ? 'large' : '',
    props.upright ? 'upright' : '',
  ];
  return (
    <button
      ref={props.ref}
      type={props.submits ? 'submit' : 'button'}
      className={[...name, props.className ?? ''].filter(Boolean).join(' ')}
      onClick={props.submits ? undefined : onPress}
      disabled={props.off}
      aria-label={props.label}
      aria-keyshortcuts={props.shortcut ?? hint}
      aria-pressed={props.pressed}
      autoFocus={props.first}
    >
      {typeof children === 'string' ? <span>{children}</span> : children}
      {hint !== undefined && <kbd aria-hidden="true">{hint}</kbd>}
    </button>
  );
}
