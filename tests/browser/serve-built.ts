/** Builds once before all browser tests, and serves what was built. */
import type { TestProject } from 'vitest/node';
import { dist, ensureBuilt } from '../setup/build.mjs';
import { serve } from '../setup/serve.mjs';

export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  if (!(await ensureBuilt())) throw new Error('The build failed, so there is nothing to test in a browser.');
  const server = await serve(dist);
  project.provide('address', server.address);
  project.provide('dist', dist);
  return server.close;
}
