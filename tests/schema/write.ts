/** `npm run schema`: writes the published JSON Schema of a file of panels anew. */
import { writeFileSync } from 'node:fs';
import { schemaFile, schemaText } from './file-schema.ts';

writeFileSync(schemaFile, schemaText());
console.log(`${schemaFile} is written.`);
