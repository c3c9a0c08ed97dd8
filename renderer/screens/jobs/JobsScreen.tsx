import { useState } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { PhotoView } from '../../photo/PhotoView.tsx';
import { common } from '../../texts/common.ts';
import { jobs as say } from '../../texts/jobs.ts';
import { Key } from '../../ui/Key.tsx';
import { useMedia, wide } from '../../ui/use-media.ts';
import type { StatusProps } from '../../ui/Status.tsx';
import { CarryOn, type CarryOnData } from './CarryOn.tsx';
import { JobItem, type JobData } from './JobItem.tsx';
import { type HitData, Hits, type NearData, Search } from './Search.tsx';

export interface JobsScreenProps {
  /** The line of the job to carry on with. */
  readonly pane: Omit<LinePaneProps, 'head' | 'foot'>;
  readonly status?: StatusProps;
  /** The job touched last; null when there is none. */
  readonly carry: CarryOnData | null;
  readonly jobs: readonly JobData[];
  readonly search: string;
  /** What the search found; null while nothing is searched for. */
  readonly hits: readonly HitData[] | null;
  /** What is offered where nothing was found. */
  readonly near: NearData | null;
  readonly onSearch: (text: string) => void;
  readonly onHit: (id: string) => void;
  /** Enter in the search. */
  readonly onEnter: () => void;
  readonly onCarryOn: () => void;
  readonly onOpen: (id: string) => void;
  readonly onStart: () => void;
  /** Null where the whole sample is in the workshop. */
  readonly onSample: (() => void) | null;
  readonly onHandbook: () => void;
}

/** All jobs: the one in hand with what must be known before going on, the others by their silhouettes. */
export function JobsScreen(props: JobsScreenProps) {
  const { carry, hits } = props;
  const isWide = useMedia(wide);
  // Whoever emptied the search is still typing in it.
  const [searched, setSearched] = useState(props.search !== '');
  const onSearch = (text: string) => {
    setSearched(true);
    props.onSearch(text);
  };
  const head = (
    <div className="jobs-head">
      <h1>{say.title}</h1>
      {carry !== null && <Search text={props.search} onSearch={onSearch} onEnter={props.onEnter} />}
    </div>
  );
  const start = carry !== null && <JobsFoot {...props} />;
  return (
    <Frame
      pane={{ ...props.pane, job: say.title, ...(isWide && { head, foot: start }) }}
      {...(props.status && { status: props.status })}
      screen={carry === null ? 'jobs empty' : 'jobs'}
    >
      {!isWide && carry !== null && (
        <header className="jobs-top">
          {head}
          {start}
        </header>
      )}
      {carry === null ? (
        <Empty isWide={isWide} onStart={props.onStart} onSample={props.onSample} />
      ) : hits !== null ? (
        <Hits words={props.search} hits={hits} near={props.near} onHit={props.onHit} onSearch={onSearch} />
      ) : (
        <>
          <div className="jobs-photo">
            {carry.photo === null ? (
              <Bare carry={carry} />
            ) : (
              <PhotoView key={carry.photo.id} photo={carry.photo} />
            )}
          </div>
          <CarryOn carry={carry} first={!searched} onGo={props.onCarryOn} />
          <Others jobs={props.jobs} onOpen={props.onOpen} />
        </>
      )}
    </Frame>
  );
}

/** The ways on from Jobs; the sample quietly, as long as it is not in the workshop. */
function JobsFoot(props: Pick<JobsScreenProps, 'onStart' | 'onHandbook' | 'onSample'>) {
  return (
    <div className="jobs-foot">
      <Key onPress={props.onStart} hint={say.startHint}>
        {say.start}
      </Key>
      <Key onPress={props.onHandbook} hint={say.handbookHint}>
        {common.handbook}
      </Key>
      {props.onSample !== null && (
        <button type="button" className="link" onClick={props.onSample} aria-keyshortcuts={say.sampleHint}>
          {say.sample} <kbd aria-hidden="true">{say.sampleHint}</kbd>
        </button>
      )}
    </div>
  );
}

function Others({
  jobs,
  onOpen,
}: {
  readonly jobs: readonly JobData[];
  readonly onOpen: (id: string) => void;
}) {
  return (
    <section className="jobs-others" aria-label={say.others}>
      <ul>
        {jobs.map((job) => (
          <JobItem key={job.id} job={job} onOpen={onOpen} />
        ))}
      </ul>
    </section>
  );
}

/** No photo in the whole job: its name, as large as it fits. */
function Bare({ carry }: { readonly carry: CarryOnData }) {
  return (
    <div className="no-photo">
      <p className="said jobs-bare">{carry.title}</p>
      <p className="how">{carry.machine}</p>
    </div>
  );
}

interface EmptyProps {
  readonly isWide: boolean;
  readonly onStart: () => void;
  readonly onSample: (() => void) | null;
}

function Empty({ isWide, onStart, onSample }: EmptyProps) {
  return (
    <div className="jobs-empty">
      {isWide ? <h2>{say.empty}</h2> : <h1>{say.empty}</h1>}
      <p>{say.emptyHow}</p>
      <p>{say.sampleHow}</p>
      <div className="keys">
        <Key look="go" large onPress={onStart} first>
          {say.startOwn}
        </Key>
        {onSample !== null && (
          <Key large onPress={onSample} hint={say.sampleHint}>
            {say.sample}
          </Key>
        )}
      </div>
    </div>
  );
}
