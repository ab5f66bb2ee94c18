import type { OwnWordPatterns } from '../own-words.ts'

export const ownWords: OwnWordPatterns = {
  define: [
    `(?:when(?:ever)? (?:we|i|he|they) say|by) "?(?<word>[^",]+?)"?,? (?:we mean|i mean|it means|that means|that is|thats|that's|its|it's|it is|he means|they mean) (?<means>.+)`,
    `"(?<word>[^"]+)" (?:is|are|means|mean|stands for|is short for|is our word for|=) (?<means>.+)`,
    `(?:we|they|the guys|us) (?:call|say) (?<means>.+?) "(?<word>[^"]+)"`,
    `(?:we|they|the guys) say "(?<word>[^"]+)" (?:for|and mean) (?<means>.+)`,
    `(?!what|which|that|it|this|how|who|when)(?<word>[a-z][a-z '-]{1,30}?) means (?<means>.+)`,
  ],
  remove: [
    `(?:forget|remove|drop|delete) (?:the|our) word "?(?<word>[^"]+?)"?`,
    `(?:forget|remove|drop|delete) "(?<word>[^"]+)"`,
  ],
  list: [
    `(?:show |list |what are |whats |tell me )?(?:all )?our (?:own )?words`,
    `(?:show |list )?(?:the )?crew'?s words`,
  ],
  articles: ['the', 'a', 'an', 'our', 'my', 'that', 'those', 'some'],
}
