/**
 * What Slack takes: its Block Kit reference and the types of @slack/types, unless said otherwise. `budget` is ours, for
 * the blocks of one answer as JSON: posts over about 13 200 characters are refused (slackapi/bolt-js issue 2509), and the
 * buttons that every private answer gets need room too.
 */
export const limits = {
  text: 4000,
  blocks: 50,
  viewBlocks: 100,
  sectionText: 3000,
  budget: 9000,
  message: 13_000,
  actions: 25,
  contexts: 10,
  buttonText: 75,
  buttonValue: 2000,
  identifier: 255,
  viewTitle: 24,
  privateMetadata: 3000,
  label: 2000,
  placeholder: 150,
  optionText: 75,
  optionValue: 150,
  selectOptions: 100,
  inputText: 3000,
  altText: 1000,
  responseUses: 5,
  responseMinutes: 30,
} as const
