import type { LineData } from '../../../core/drawing/line/types.ts';
import { TallyStick } from '../../line/TallyStick.tsx';
import type { PhotoData } from '../../photo/types.ts';
import { jobs as say } from '../../texts/jobs.ts';

/** A job in the list. */
export interface JobData {
  readonly id: string;
  readonly title: string;
  readonly photo: PhotoData | null;
  readonly line: LineData;
  readonly off: number;
  readonly back: number;
  /** What it waits for and since when, in one line. */
  readonly about: string;
}

export function JobItem({ job, onOpen }: { readonly job: JobData; readonly onOpen: (id: string) => void }) {
  return (
    <li>
      <button type="button" className="job" onClick={() => onOpen(job.id)}>
        <TallyStick line={job.line} />
        <span className="job-picture">
          {job.photo === null ? (
            <span className="job-bare">
              <b className="num">{job.off - job.back}</b>
              <span className="cap">{say.noPhoto}</span>
            </span>
          ) : (
            <img src={job.photo.src} alt={job.photo.alt} loading="lazy" />
          )}
        </span>
        <span className="job-words">
          <span className="said">{job.title}</span>
          <b>{say.offBackLeft(job.off, job.back, job.off - job.back)}</b>
          <span className="about">{job.about}</span>
        </span>
      </button>
    </li>
  );
}
