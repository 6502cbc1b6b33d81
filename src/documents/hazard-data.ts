/** A lot's hazards for programs: the part of its data.json, and the schema it keeps to. */

import * as z from 'zod'
import type { ComputedHazards, HazardEdition, HazardText, ReasonedClass } from './hazard-types.ts'
import { plainSpaces } from './words.ts'

const classData = z.strictObject({
  class: z.string(),
  statement: z.string().describe('H statement of the class'),
  reasons: z
    .array(z.strictObject({ text: z.string(), clauses: z.array(z.string()) }))
    .nullable()
    .describe('null where the results they name are not shown'),
  margin: z
    .string()
    .nullable()
    .describe('set where a limit lies within the uncertainty of what was measured')
})

const statementData = z.strictObject({ code: z.string(), text: z.string() })

export const hazardDataSchema = z.strictObject({
  label: z.strictObject({
    classes: z.array(z.string()).describe('declared or computed, the more severe of each family'),
    pictograms: z.array(z.string()),
    signal: z.string().nullable(),
    statements: z.array(statementData)
  }),
  computed: z
    .strictObject({
      state: z.enum(['complete', 'incomplete']).describe('incomplete is never: not classified'),
      sentence: z.string(),
      classes: z.array(classData),
      from: z.array(z.string()),
      notes: z.array(z.string()).describe('what disagrees, is open, or was decided and by whom'),
      agreement: z.string(),
      dust: z.string().nullable()
    })
    .nullable(),
  editions: z
    .array(
      z.strictObject({
        title: z.string(),
        classes: z.array(z.string()),
        pictograms: z.array(z.string()),
        signal: z.string().nullable(),
        statements: z.array(statementData),
        sentence: z.string(),
        edition: z.string()
      })
    )
    .optional()
    .describe('labels of other editions, where the papers carry them'),
  languages: z
    .array(
      z.strictObject({
        language: z.enum(['de', 'fr', 'es', 'it']),
        signal: z.string().nullable(),
        statements: z.array(statementData)
      })
    )
    .optional()
    .describe('the statements in other languages, where asked for'),
  basis: z.string().describe('who says so; an aid, no legal classification, no safety data sheet'),
  edition: z.string().describe('of the wording of the statements'),
  transport: z.string()
})

export type HazardData = z.output<typeof hazardDataSchema>

/**
 * The hazards of one page.
 *
 * @param reasons of the classes computed; absent where their figures are not shown
 */
export const hazardDataOf = (
  block: HazardText,
  reasons: readonly ReasonedClass[] | undefined
): HazardData => ({
  label: {
    classes: [...block.classified],
    pictograms: block.pictograms.map(({ code }) => code),
    signal: block.signal ?? null,
    statements: plain(block.statements)
  },
  computed: block.computed ? computedData(block.computed, reasons) : null,
  ...(block.editions ? { editions: block.editions.map(editionData) } : {}),
  ...(block.languages
    ? {
        languages: block.languages.flatMap(({ language, signal, statements }) =>
          // The label itself is in English.
          language === 'en'
            ? []
            : [{ language, signal: signal ?? null, statements: plain(statements) }]
        )
      }
    : {}),
  basis: plainSpaces(block.basis),
  edition: block.edition,
  transport: plainSpaces(block.transport)
})

const plain = (statements: HazardText['statements']) =>
  statements.map(({ code, text }) => ({ code, text: plainSpaces(text) }))

const editionData = (one: HazardEdition) => ({
  title: one.title,
  classes: [...one.classified],
  pictograms: one.pictograms.map(({ code }) => code),
  signal: one.signal ?? null,
  statements: plain(one.statements),
  sentence: one.sentence,
  edition: one.edition
})

const computedData = (
  computed: ComputedHazards,
  reasons: readonly ReasonedClass[] | undefined
): NonNullable<HazardData['computed']> => ({
  state: computed.state,
  sentence: plainSpaces(computed.sentence),
  classes: computed.classes.map(({ name, statement }) => {
    const reasoned = reasons?.find(one => one.name === name)
    return {
      class: name,
      statement,
      reasons:
        reasoned?.reasons.map(({ text, clauses }) => ({
          text: plainSpaces(text),
          clauses: clauses.map(plainSpaces)
        })) ?? null,
      margin: reasoned?.margin ?? null
    }
  }),
  from: computed.from.map(plainSpaces),
  notes: computed.notes.map(plainSpaces),
  agreement: plainSpaces(computed.agreement),
  dust: computed.dust === undefined ? null : plainSpaces(computed.dust)
})
