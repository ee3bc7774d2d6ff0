/** Builds once before all browser tests, and serves what was built. */
import type { TestProject } from 'vitest/node';
import { serveBuilt } from './serve.ts';

export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const server = await serveBuilt();
  project.provide('address', server.address);
  project.provide('dist', server.folder);
  return server.close;
}
