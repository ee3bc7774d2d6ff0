import type { Start } from '../state/store.ts';

type HasProject = Pick<Start, 'project'>;

/** Whether two kept works are of the same panel as it was told; where the walk stands is no part of it. */
export const sameProject = (one: HasProject, other: HasProject): boolean =>
  JSON.stringify(one.project) === JSON.stringify(other.project);
