/**
 * The same panels in every run, so that a result belongs to the code and not to the day. `SEED=random` draws new ones,
 * `SEED=123` those of a run that failed.
 */
import fc from 'fast-check';

const asked = process.env.SEED ?? '20261';
if (asked !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(asked) });
