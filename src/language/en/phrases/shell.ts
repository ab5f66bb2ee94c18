/** What the shell round the answers says by itself. */
export const shell = {
  'shell.units-imperial': 'feet and inches',
  'shell.units-metric': 'metric',
  'shell.late': 'Late, I was away:',
  'shell.hint': 'Ask as you would say it. For example:',
  'shell.hint-leave': 'Ctrl-D leaves.',
  'shell.example-1': '10x13 shop floor less a 3x4 counter, 18x18, 3/16 joint',
  'shell.example-2': 'set at 2pm, 58F, when can we grout?',
  'shell.example-3': 'water for half a bag',
  'shell.saved': 'Saved: {path}',
  'shell.not-saved': 'The picture could not be saved ({why}).',
  'shell.interrupted': 'Ctrl-D (or Ctrl-C again) leaves.',
  'shell.next': 'Next:',
}
