type Part = Readonly<Record<string, unknown>>

const partsOf = (value: unknown): readonly Part[] => (Array.isArray(value) ? (value as Part[]) : [])

const isOver = (what: string, value: unknown, most: number, least = 0): readonly string[] => {
  const length = typeof value === 'string' ? value.length : 0
  return length > most || length < least ? [`${what}: ${length} characters, ${least} to ${most} allowed`] : []
}

/** What Discord would refuse of a form (Component Reference: Label, Text Input, String Select; modal callback). */
export function checkForm(form: Part): readonly string[] {
  const labels = partsOf(form.components)
  const fields = labels.map(({ component }) => component as Part)
  const ids = fields.map(({ custom_id: id }) => id)
  return [
    ...isOver('a title', form.title, 45, 1),
    ...isOver('an id', form.custom_id, 100, 1),
    ...(labels.length < 1 || labels.length > 5 ? [`${labels.length} fields, 1 to 5 allowed`] : []),
    ...(labels.every(({ type }) => type === 18) ? [] : ['a field without a label']),
    ...labels.flatMap(({ label }) => isOver('a label', label, 45, 1)),
    ...labels.flatMap(({ description }) => isOver('a description', description, 100)),
    ...(new Set(ids).size < ids.length ? ['two fields of one id'] : []),
    ...fields.flatMap(checkField),
  ]
}

function checkField(field: Part): readonly string[] {
  if (field.type === 4)
    return [
      ...isOver('an id', field.custom_id, 100, 1),
      ...isOver('a placeholder', field.placeholder, 100),
      ...isOver('a value', field.value, 4000),
      ...([1, 2].includes(Number(field.style)) ? [] : ['a text field without a style']),
      ...(field.label === undefined ? [] : ['a text field under a label has no label of its own']),
    ]
  const options = partsOf(field.options)
  return [
    ...(field.type === 3 ? [] : [`a field of type ${field.type}`]),
    ...isOver('an id', field.custom_id, 100, 1),
    ...(options.length < 1 || options.length > 25 ? [`${options.length} choices, 1 to 25 allowed`] : []),
    ...options.flatMap(({ label, value }) => [
      ...isOver('a choice', label, 100, 1),
      ...isOver('a value', value, 100, 1),
    ]),
    ...(field.required !== false && field.min_values === 0 ? ['required, and none is enough'] : []),
  ]
}
