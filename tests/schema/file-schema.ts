/** The published JSON Schema of a file of panels, made from the schemas that read it. */
import { toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import { fileSchema } from '../../src/input/file-schema.ts';
import { fieldSchema } from '../../src/input/project.ts';
import { clothFieldNames } from '../../src/state/cloth-fields.ts';
import { fieldRows } from '../../src/state/fields.ts';
import { patternFields } from '../../src/state/pattern-fields.ts';

export const schemaFile = 'assets/schema/panels.schema.json';

/** What a key holds, for those who read or write such a file. */
const about: Record<string, string> = {
  format: 'Always "Ringtrue panels".',
  version: 'Of this format. A later one is for a later version of the program.',
  saved: 'The day it was saved.',
  sum: 'CRC-32 in base 36 of the JSON text of [saved, panels]. Where it does not fit, the file was changed since; it is read all the same, and that is told.',
  panels: 'One or more panels.',
  sideCount: 'Sides of the panel; 0 for a round one.',
  counted: 'What the maker counted a side with.',
  cornerMade: 'Whether a corner is chains or stitches.',
  cornersDiffer: 'Every corner has a size of its own.',
  edgingCount: 'Edging rounds of the back.',
  choices: 'Choices for the back that are pressed and not typed.',
  texts:
    'Every text field as it was typed, under its name: "side.0" is the count of side 1, "corner" the size of every corner. What is absent was never typed.',
  mishaps: 'What was done beside the recipe, to see what comes of it.',
  adjustments: 'What is to be worked otherwise than the recipe has it.',
  stands: 'How far the piece is, where that was said.',
  walk: 'Where the walk stands: the how manieth step, counted from 0, of an edition of the walk.',
};

type Json = { [key: string]: unknown };

/** "side.0" and "side.23" are one pattern. */
const namePattern = (names: readonly string[]): string => {
  const shapes = new Set(names.map((name) => name.replace(/\d+/g, '\\d{1,2}').replaceAll('.', '\\.')));
  return `^(${[...shapes].join('|')})$`;
};

const isFieldName = (schema: unknown): boolean => schema === fieldSchema || schema === fieldSchema.pipe[0];

function described(value: unknown, key = ''): unknown {
  if (Array.isArray(value)) return value.map((one) => described(one));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([name, inner]): [string, unknown] => [
    name,
    name === 'properties'
      ? Object.fromEntries(Object.entries(inner as Json).map(([one, of]) => [one, described(of, one)]))
      : described(inner),
  ]);
  const description = about[key];
  return { ...(description && { description }), ...Object.fromEntries(entries) };
}

export function fileJsonSchema(): Json {
  const names = [...fieldRows.map(({ field }) => field), ...clothFieldNames, ...Object.values(patternFields)];
  const schema = toJsonSchema(fileSchema as v.GenericSchema, {
    typeMode: 'input',
    errorMode: 'ignore',
    overrideSchema: ({ valibotSchema, jsonSchema }) =>
      isFieldName(valibotSchema) ? { ...jsonSchema, type: 'string', pattern: namePattern(names) } : undefined,
  });
  return { title: 'Ringtrue panels', ...(described(schema) as Json) };
}

export const schemaText = (): string => `${JSON.stringify(fileJsonSchema(), null, 2)}\n`;
