/** The key of a Slack channel's job. */
import type { ChannelKey } from '../contract.ts'

export const SLACK_NAME = 'slack'

export const channelKey = (team: string, channel: string): ChannelKey => `${SLACK_NAME}:${team}:${channel}`

/** The channel id in a key of this platform, or null. */
export function channelOf(key: ChannelKey): string | null {
  const [platform, team, channel] = key.split(':')
  return platform === SLACK_NAME && team && channel ? channel : null
}
