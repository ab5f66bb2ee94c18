/** Slack's published limits of Block Kit and the Web API, in UTF-16 units and elements. */
export const SLACK = {
  /** Block Kit reference, text object. */
  textObject: 3000,
  /** Block Kit reference, blocks in a message (a view may have 100). */
  blocks: 50,
  viewBlocks: 100,
  /** Block Kit reference, context and actions block. */
  contextElements: 10,
  actionElements: 25,
  /** Block Kit reference, button element. */
  buttonText: 75,
  actionId: 255,
  buttonValue: 2000,
  blockId: 255,
  /** Block Kit reference, views: title, submit, close; private metadata; callback id. */
  viewTitle: 24,
  privateMetadata: 3000,
  callbackId: 255,
  inputLabel: 2000,
  placeholder: 150,
  /** chat.postMessage advises 4,000 for `text`; it cuts at 40,000. */
  messageText: 4000,
  /** Ours: what a thread still reads; longer goes to a file. */
  visible: 9000,
  /** Ours: bytes of one upload. */
  fileBytes: 20_000_000,
} as const
