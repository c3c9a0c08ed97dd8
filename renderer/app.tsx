import { useEffect, useLayoutEffect } from 'react';
import { type OpenJob, useJob } from './data/job.ts';
import { keyMap, showKeys, useKeys } from './data/keys.ts';
import { remember, type ScreenName } from './data/remember.ts';
import { useKeptFocus } from './frame/kept-focus.ts';
import { BenchPage } from './pages/BenchPage.tsx';
import { BeginPage } from './pages/BeginPage.tsx';
import { DaysPage } from './pages/DaysPage.tsx';
import { HandbookPage } from './pages/HandbookPage.tsx';
import { HandoverNotice } from './pages/HandoverNotice.tsx';
import { JobsPage } from './pages/JobsPage.tsx';
import { OffPage } from './pages/OffPage.tsx';
import { PhotosPage } from './pages/PhotosPage.tsx';
import { PutBackPage } from './pages/PutBackPage.tsx';
import { ReachPage } from './pages/ReachPage.tsx';
import { RemovalPage } from './pages/RemovalPage.tsx';
import { StopWorkPage } from './pages/StopWorkPage.tsx';
import { KeysDialog } from './screens/keys/KeysDialog.tsx';

/** Dark where the user or the system asks for it; the style sheet follows this one attribute. */
function useTheme(): void {
  const theme = remember((place) => place.theme);
  useEffect(() => {
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      document.documentElement.dataset['theme'] =
        theme === 'system' ? (dark.matches ? 'dark' : 'light') : theme;
    };
    apply();
    dark.addEventListener('change', apply);
    return () => dark.removeEventListener('change', apply);
  }, [theme]);
}

/** Another screen or step begins at its top: on a phone the page is longer than the window. */
function useTop(...place: readonly (string | null)[]): void {
  const at = place.join(' ');
  useLayoutEffect(() => {
    window.scrollTo(0, 0);
  }, [at]);
}

function KeyMap() {
  const { open } = keyMap();
  const { theme, go } = remember();
  return (
    <KeysDialog
      open={open}
      theme={theme}
      onTheme={(now) => go({ theme: now })}
      onClose={() => showKeys(false)}
    />
  );
}

/** The screen that this window is at, and over it the keyboard map where it is asked for. */
export function App() {
  useKeptFocus();
  return (
    <>
      <Screen />
      <KeyMap />
    </>
  );
}

function Screen() {
  const { screen, stepId } = remember();
  const job = useJob();
  useTheme();
  useKeys(job);
  useTop(screen, job?.id ?? null, stepId);
  if (screen === 'handbook') return <HandbookPage job={job} />;
  if (job === null || screen === 'jobs') return <JobsPage />;
  return (
    <>
      <JobScreen job={job} screen={screen} />
      <HandoverNotice job={job} />
    </>
  );
}

function JobScreen({
  job,
  screen,
}: {
  readonly job: OpenJob;
  readonly screen: Exclude<ScreenName, 'jobs' | 'handbook'>;
}) {
  switch (screen) {
    case 'begin':
      return <BeginPage job={job} />;
    case 'bench':
      return <BenchPage job={job} />;
    case 'removal':
      return <RemovalPage job={job} />;
    case 'off':
      return <OffPage job={job} />;
    case 'putback':
      return <PutBackPage job={job} />;
    case 'days':
      return <DaysPage job={job} />;
    case 'reach':
      return <ReachPage job={job} />;
    case 'photos':
      return <PhotosPage job={job} />;
    case 'stopwork':
      return <StopWorkPage job={job} />;
  }
}
