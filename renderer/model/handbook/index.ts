import type { AnswerData, FieldData, Topic } from '../../screens/handbook/types.ts';
import { handbook as say } from '../../texts/handbook.ts';
import type { TopicModel, Typed } from './answer.ts';
import { extensionTopic } from './extension.ts';
import { identifyTopic } from './identify.ts';
import { mixTopic } from './mix.ts';
import { orderTopic } from './order.ts';
import { oringTopic } from './oring.ts';
import { LUBRICATIONS, torqueTopic } from './torque.ts';
import { unitsTopic } from './units.ts';

const TOPICS: Readonly<Record<Topic, TopicModel>> = {
  identify: identifyTopic,
  torque: torqueTopic,
  extension: extensionTopic,
  order: orderTopic,
  oring: oringTopic,
  mix: mixTopic,
  units: unitsTopic,
};

export const TOPIC_NAMES = Object.keys(TOPICS) as readonly Topic[];

/** What the handbook holds between two looks: the topic, what is typed, and what it was filled in from. */
export interface HandbookState {
  readonly topic: Topic;
  readonly typed: Partial<Record<Topic, Typed>>;
  /** "Side cover: 4 M8x25, 8.8"; "" where it was opened by itself. */
  readonly from: string;
}

const EMPTY: HandbookState = { topic: 'identify', typed: {}, from: '' };

/** Reads what was kept. Anything else than that is nothing: a draft may be lost without loss. */
export function readState(text: string): HandbookState {
  try {
    const kept = JSON.parse(text) as Partial<HandbookState> | null;
    if (kept === null || typeof kept !== 'object' || !TOPIC_NAMES.includes(kept.topic as Topic)) return EMPTY;
    return { topic: kept.topic ?? 'identify', typed: kept.typed ?? {}, from: String(kept.from ?? '') };
  } catch {
    return EMPTY;
  }
}

const OPTIONS: Readonly<Record<string, FieldData['options']>> = {
  lubrication: LUBRICATIONS,
  shape: (['ring', 'frame', 'rows'] as const).map((value) => ({ value, label: say.shapes[value] })),
};

const MORE: ReadonlySet<string> = new Set(['torque/head', 'torque/reached', 'torque/share', 'torque/mu']);

/** The fields of the topic at hand, and its answer. */
export function handbookOf(state: HandbookState): {
  readonly fields: readonly FieldData[];
  readonly answer: AnswerData | null;
} {
  const model = TOPICS[state.topic];
  const typed = state.typed[state.topic] ?? {};
  const { answer, refused } = model.answer(typed);
  const fields = model.fields.map((id): FieldData => {
    const { label, example } = say.fields[state.topic]?.[id] ?? { label: id, example: '' };
    const options = OPTIONS[id] ?? [];
    return {
      id,
      label,
      example,
      value: typed[id] ?? options[0]?.value ?? '',
      refused: refused[id] ?? '',
      more: MORE.has(`${state.topic}/${id}`),
      options,
    };
  });
  return { fields, answer };
}

/** One field of the topic at hand changed. */
export function withTyped(state: HandbookState, field: string, value: string): HandbookState {
  return {
    ...state,
    typed: { ...state.typed, [state.topic]: { ...state.typed[state.topic], [field]: value } },
  };
}
