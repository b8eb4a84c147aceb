import { PHONE_COLUMNS } from '../../bot/format.ts'

/**
 * What Discord takes at most, from its developer documentation (Application Commands, Component Reference, Message, Receiving
 * and Responding, Uploading Files). Characters where nothing else is said.
 */
export const limits = {
  commands: 100,
  options: 25,
  choices: 25,
  /** Names, descriptions and values of one command with all that is in it. */
  commandText: 8000,
  name: 32,
  description: 100,
  choiceText: 100,
  suggestions: 25,

  /** Text of all parts of one message together. */
  text: 4000,
  /** Parts of one message, those inside others counted too. */
  components: 40,
  rows: 5,
  rowButtons: 5,
  buttonLabel: 80,
  customId: 100,
  pictures: 10,
  alt: 1024,
  files: 10,
  /** Where the event does not say more. */
  fileBytes: 10 * 2 ** 20,
  requestBytes: 25 * 2 ** 20,
  tableColumns: PHONE_COLUMNS,

  modalTitle: 45,
  modalFields: 5,
  fieldLabel: 45,
  fieldDescription: 100,
  placeholder: 100,
  fieldText: 4000,

  /** Messages after the first, where the app belongs to a person and not to the server. */
  followUps: 5,
  acknowledgeSeconds: 3,
  editMinutes: 15,
} as const
