import fc from 'fast-check';

/** Random jobs start from the same seed in every run, so that a mutant lives or dies the same way twice. */
fc.configureGlobal({ seed: 6 });
