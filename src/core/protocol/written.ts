// Steps and constructs as written: checked, their quantities still in words, so that one protocol serves every pot.
import type { Grade, StepWord } from './model.ts'

type AsWritten = string | number
type Named = { id: string | null }

export type WrittenStep = Named & { word: StepWord; fields: Record<string, unknown> }

/** Fields that all constructs share. */
export type ConstructFields = { label: string | null; marks: string[] }

export type WrittenRepeat = Named & {
  word: 'repeat'
  fields: ConstructFields & { times: AsWritten; steps: WrittenNode[] }
}

/** The items of a for each: named one by one, or counted from one number to another. */
export type WrittenItems = { list: string[] } | { from: AsWritten; to: AsWritten }

export type WrittenEach = Named & {
  word: 'for each'
  fields: ConstructFields & { item: LoopName; items: WrittenItems; steps: WrittenNode[] }
}

export type WrittenAsk = {
  grade?: string
  enough?: Grade
  temperature?: AsWritten
  reached?: AsWritten
  ph?: AsWritten
  question?: string
  answers?: string[]
}

export type WrittenUntil = Named & {
  word: 'until'
  fields: ConstructFields & {
    ask: WrittenAsk
    'at most': AsWritten
    likely: number | null
    steps: WrittenNode[]
    otherwise: WrittenNode[] | null
  }
}

export type WrittenChoice = Named & {
  word: 'choice'
  fields: ConstructFields & { ask: string; answers: { id: string; label: string; steps: WrittenNode[] }[] }
}

export type WrittenAlongside = Named & {
  word: 'alongside'
  fields: ConstructFields & { branches: { id: string; steps: WrittenNode[] }[] }
}

export type WrittenConstruct = WrittenRepeat | WrittenEach | WrittenUntil | WrittenChoice | WrittenAlongside
export type WrittenNode = WrittenStep | WrittenConstruct

export const constructWords = ['repeat', 'for each', 'until', 'choice', 'alongside'] as const
export type ConstructWord = (typeof constructWords)[number]

/** What a for each can go through. Bands, jars and skeins are counted; jars and skeins have goods of their own. */
export const loopNames = ['band', 'jar', 'skein', 'colour', 'item'] as const
export type LoopName = (typeof loopNames)[number]

export function isStep(node: WrittenNode): node is WrittenStep {
  return !(constructWords as readonly string[]).includes(node.word)
}

/** The sequences inside a construct, in the order of the text. */
export function sequencesOf(node: WrittenConstruct): WrittenNode[][] {
  switch (node.word) {
    case 'repeat':
    case 'for each':
      return [node.fields.steps]
    case 'until':
      return node.fields.otherwise ? [node.fields.steps, node.fields.otherwise] : [node.fields.steps]
    case 'choice':
      return node.fields.answers.map((answer) => answer.steps)
    case 'alongside':
      return node.fields.branches.map((branch) => branch.steps)
  }
}
