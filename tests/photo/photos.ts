/** The command: `npm run photos -- FOLDER`. */
import { report } from './own.ts';

await report(process.argv[2]);
