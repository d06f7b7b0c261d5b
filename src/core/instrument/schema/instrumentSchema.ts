import * as z from 'zod';
import { asBuiltSchema } from './asBuilt.ts';
import { circuitSchema } from './circuit.ts';
import { controllerSchema, cupsSchema } from './controller.ts';
import { discSchema } from './disc.ts';
import { line } from './field.ts';
import { headSchema } from './head.ts';
import { needSchema } from './need.ts';
import { partsSchema } from './parts.ts';
import { powerSchema } from './power.ts';
import { sensingSchema } from './sensing.ts';
import { siteSchema } from './site.ts';

/** Version of the instrument file that this reader knows. */
export const FILE_VERSION = 1;

/** Longest name of an instrument. [characters] */
const LONGEST_NAME = 80;

/**
 * The instrument file, field by field: the one place that knows ranges, units, defaults and meanings.
 *
 * The JSON Schema, the reference page and the errors are all made from it.
 */
export const instrumentSchema = z.strictObject({
  vanewright: z.literal(FILE_VERSION).meta({ description: 'Version of the file format; the first line of the file.' }),
  name: line(LONGEST_NAME, { meaning: 'What you call this instrument.', example: 'my vane' }),
  need: needSchema,
  sensing: sensingSchema.prefault({}),
  disc: discSchema,
  head: headSchema.prefault({}),
  circuit: circuitSchema.prefault({}),
  controller: controllerSchema.prefault({}),
  cups: cupsSchema
    .nullable()
    .default(null)
    .meta({ description: cupsSchema.meta()!.description, defaultRule: 'null, for an instrument without cups' }),
  power: powerSchema.prefault({}),
  site: siteSchema.prefault({}),
  parts: partsSchema.prefault({}),
  asBuilt: asBuiltSchema
    .nullable()
    .default(null)
    .meta({ description: asBuiltSchema.meta()!.description, defaultRule: 'null, for a build not yet measured' }),
});

/** A file that fits the schema, defaults of single fields filled in; those that hang on other fields are still open. */
export type InstrumentDraft = z.output<typeof instrumentSchema>;
