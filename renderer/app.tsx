import { useEffect } from 'react';
import { useJob } from './data/job.ts';
import { useKeys } from './data/keys.ts';
import { remember } from './data/remember.ts';
import { JobsPage } from './pages/JobsPage.tsx';
import { RemovalPage } from './pages/RemovalPage.tsx';

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

/** The screen that this window is at. */
export function App() {
  const screen = remember((place) => place.screen);
  const job = useJob();
  useTheme();
  useKeys(job);
  if (job === null || screen === 'jobs') return <JobsPage />;
  return <RemovalPage job={job} />;
}
