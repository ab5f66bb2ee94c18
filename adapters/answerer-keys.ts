/** A channel's key on its platform, and the key of its job in the store. */
import type { ChannelKey } from './contract.ts'
import { channelKey } from './stores/store.ts'

/** Neither platform has it in an id. */
const ALONE = '~'

/** Slack's direct messages have ids that begin with D; Discord's adapter names none of its servers for one. */
const isDirect = (workspace: string, channel: string) => workspace === 'direct' || channel.startsWith('D')

/** `PLATFORM:WORKSPACE:CHANNEL` to the store's key. What a workspace's channels share is not shared with direct messages:
 *  each counts as a workspace of its own. */
export function jobKeyOf(key: ChannelKey): string {
  const [platform = '', workspace = '', ...rest] = key.split(':')
  const channel = rest.join(':')
  return channelKey(platform, isDirect(workspace, channel) ? `${workspace}${ALONE}${channel}` : workspace, channel)
}

/** The way back, for a reminder that is due. */
export function channelOfJob(job: string): ChannelKey {
  const [platform = '', workspace = '', channel = ''] = job.split('/').map(decoded)
  return `${platform}:${workspace.split(ALONE)[0]}:${channel}`
}

const decoded = (part: string) =>
  part.replace(/%([0-9a-f]{4})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
