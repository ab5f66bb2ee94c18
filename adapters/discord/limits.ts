/** Discord's published limits, in UTF-16 units and elements (Developer documentation: message, embed, component, modal,
 *  application command, interaction response). */
export const DISCORD = {
  /** A bot's message; the schema's 4,000 is for subscribers. */
  content: 2000,
  embedDescription: 4096,
  /** Over all embeds of a message. */
  embedTotal: 6000,
  rows: 5,
  rowButtons: 5,
  buttonLabel: 80,
  customId: 100,
  modalTitle: 45,
  inputLabel: 45,
  placeholder: 100,
  inputValue: 500,
  commandDescription: 100,
  optionLength: 2000,
  choices: 25,
  choice: 100,
  files: 10,
  alt: 1024,
  /** Bytes of one upload in a server without boosts is 10 MiB; a little is left for the form around it. */
  fileBytes: 9_500_000,
  /** A nonce that makes a repeated post one message. */
  nonce: 25,
} as const
