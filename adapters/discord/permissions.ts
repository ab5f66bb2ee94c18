/** The link that adds the bot to a server with no more than it needs. */

/** Bits of Discord's permission field, by their documented names. */
export const PERMISSIONS = {
  VIEW_CHANNEL: 1n << 10n,
  SEND_MESSAGES: 1n << 11n,
  EMBED_LINKS: 1n << 14n,
  ATTACH_FILES: 1n << 15n,
  READ_MESSAGE_HISTORY: 1n << 16n,
  SEND_MESSAGES_IN_THREADS: 1n << 38n,
} as const

export const permissionBits = (): bigint => Object.values(PERMISSIONS).reduce((all, bit) => all | bit, 0n)

export const inviteLink = (applicationId: string): string =>
  `https://discord.com/oauth2/authorize?client_id=${applicationId}&scope=bot+applications.commands&permissions=${permissionBits()}`
