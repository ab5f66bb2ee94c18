/** The key of a Discord channel's job: a thread shares its parent's, a direct message has its own. */
import type { ChannelKey } from '../contract.ts'

export const DISCORD_NAME = 'discord'

export const channelKey = (guild: string | null | undefined, channel: string): ChannelKey =>
  `${DISCORD_NAME}:${guild ?? 'direct'}:${channel}`

/** The channel id in a key of this platform, or null. */
export function channelOf(key: ChannelKey): string | null {
  const [platform, guild, channel] = key.split(':')
  return platform === DISCORD_NAME && guild && channel ? channel : null
}

/** Announcement, public and private thread. */
export const isThread = (type: number | undefined): boolean => type === 10 || type === 11 || type === 12
