import type { Basis, Outcome } from '../../../core/fastening/index.ts';
import type { AnswerData, Topic } from '../../screens/handbook/types.ts';

/** What was typed under a topic, by field. */
export type Typed = Readonly<Record<string, string>>;

/** An answer, and what could not be read, by field. */
export interface Answered {
  readonly answer: AnswerData | null;
  readonly refused: Readonly<Record<string, string>>;
}

export type Answering = (typed: Typed) => Answered;

export interface TopicModel {
  readonly topic: Topic;
  /** Field ids in order; a field with options is a choice, the first of them stands until told. */
  readonly fields: readonly string[];
  readonly answer: Answering;
}

const NOTHING: AnswerData = {
  figure: null,
  whose: '',
  beside: '',
  says: [],
  groups: [],
  points: [],
  drawing: [],
  basis: null,
  want: '',
};

export function answerOf(values: Partial<AnswerData>): AnswerData {
  return { ...NOTHING, ...values };
}

/** The part of a result that goes with every answer. */
export function basisOf({ formula, inputs, source, limits, cautions }: Basis): AnswerData['basis'] {
  return { formula, inputs, source, limits, cautions };
}

/** Reads typed fields one after the other and keeps what was refused, each at its field. */
export class Reading {
  readonly refused: Record<string, string> = {};
  private readonly typed: Typed;

  constructor(typed: Typed) {
    this.typed = typed;
  }

  /** The text of a field without blanks around it; "" where nothing was typed. */
  text(field: string): string {
    return (this.typed[field] ?? '').trim();
  }

  /** The value of a field; undefined where nothing was typed or it was refused. */
  read<T>(field: string, parse: (text: string) => Outcome<T>): T | undefined {
    const text = this.text(field);
    if (text === '') return undefined;
    return this.take(field, parse(text));
  }

  /** Keeps a refusal at the field that it belongs to. */
  take<T>(field: string, outcome: Outcome<T>): T | undefined {
    if (outcome.ok) return outcome.value;
    this.refused[field] = outcome.sentence;
    return undefined;
  }

  get ok(): boolean {
    return Object.keys(this.refused).length === 0;
  }

  /** No answer while something cannot be read: half an answer would be taken for a whole one. */
  end(answer: AnswerData | null): Answered {
    return { answer: this.ok ? answer : null, refused: this.refused };
  }
}
