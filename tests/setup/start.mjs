/** `npm start`: installs and builds what is missing, serves it and says where. */
import { dist, ensureBuilt } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { serve } from './serve.mjs';

if (!(await ensureInstalled()) || !(await ensureBuilt())) process.exit(1);
const { address } = await serve(dist, 4173);
console.log(`Ringtrue is ready: ${address}  (Ctrl+C ends it)`);
