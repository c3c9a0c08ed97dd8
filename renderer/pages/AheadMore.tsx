import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { useTools, walkBy } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { type NeedAsk, needAsks } from '../model/ahead.ts';
import { ahead as say } from '../texts/ahead.ts';
import { Key } from '../ui/Key.tsx';
import { Rows } from '../ui/Rows.tsx';

const pick = (stepId: string) => remember.getState().go({ stepId });

/** So many are asked at a time, and so many steps of the other order shown: the list stays short. */
const MOST_ASKS = 3;
const MOST_ROWS = 8;

/** Under the list: needs that may be none, tools and their order. */
export function AheadMore({ job }: { readonly job: OpenJob }) {
  return (
    <>
      <NeedAsks job={job} asks={needAsks(job.view)} />
      <Tools job={job} />
    </>
  );
}

interface NeedAsksProps {
  readonly job: OpenJob;
  readonly asks: readonly NeedAsk[];
}

/** Asked one by one; nothing is loosened that nobody answered. */
export function NeedAsks({ job, asks }: NeedAsksProps) {
  if (asks.length === 0) return null;
  const settle = (ask: NeedAsk, answer: 'confirmed' | 'loosened') =>
    void send(job.id, (command) =>
      client.need.settle({
        command,
        jobId: job.id,
        removalId: ask.removalId,
        needsId: ask.needsId,
        answer,
        why: answer === 'loosened' ? ask.reason : '',
      }),
    );
  const more = asks.length - MOST_ASKS;
  return (
    <section>
      <h2 className="rows-title">{say.asks}</h2>
      {asks.slice(0, MOST_ASKS).map((ask) => (
        <div key={`${ask.removalId}/${ask.needsId}`} className="ahead-ask">
          <p>
            <strong>{ask.question}</strong> {ask.reason}
          </p>
          <div className="keys">
            <Key onPress={() => settle(ask, 'confirmed')}>{say.yes}</Key>
            <Key onPress={() => settle(ask, 'loosened')}>{say.no}</Key>
          </div>
        </div>
      ))}
      {more > 0 && <p className="off-summary">{say.moreAsks(more)}</p>}
    </section>
  );
}

/** The tools as a list, and the order with the fewest changes. */
function Tools({ job }: { readonly job: OpenJob }) {
  const plan = useTools(job.id).data?.value;
  if (!plan || plan.tools.length === 0) return null;
  const step = new Map(job.view.plan.steps.map((one) => [one.id, one]));
  const fewer = plan.changes < plan.listed;
  const byTools = job.view.walk === 'tools';
  return (
    <>
      <section>
        <h2 className="rows-title">{say.tools}</h2>
        <ul>
          {plan.tools.map((one) => (
            <li key={one.tool} className="row">
              <b className="num" />
              <span>{say.tool(one.tool)}</span>
              <b className="num count">{one.fasteners}</b>
              <span className="about">
                {one.known === 'by the standard' ? say.standard : say.inSteps(one.steps)}
              </span>
            </li>
          ))}
        </ul>
      </section>
      {!plan.ring && !fewer && <p className="off-summary">{say.noFewer(plan.changes, plan.exact)}</p>}
      {fewer && (
        <Rows
          title={say.fewest}
          rows={plan.order.slice(0, MOST_ROWS).map((id, i) => ({
            id,
            mark: String(i + 1),
            name: step.get(id)?.title ?? '',
            count: '',
            about: '',
          }))}
          onPick={pick}
        >
          {plan.order.length > MOST_ROWS && (
            <p className="off-summary">{say.moreInOrder(plan.order.length - MOST_ROWS)}</p>
          )}
          <p className="off-summary">{say.changes(plan.changes, plan.listed, plan.exact)}</p>
        </Rows>
      )}
      {(fewer || byTools) && !plan.ring && (
        <div className="ahead-ask">
          <p>{byTools ? say.walksByTools : say.walksByList}</p>
          <Key onPress={() => walkBy(job.id, byTools ? 'list' : 'tools')}>
            {byTools ? say.walkByList : say.walkByTools}
          </Key>
        </div>
      )}
    </>
  );
}
