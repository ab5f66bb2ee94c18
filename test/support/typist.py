"""Runs a program under a pseudo-terminal: reads steps as JSON on standard input, writes what the screen got to standard output.
A step is [text to wait for, text to type] or [text to wait for, signal number, "kill"]. Ends with the program's exit code on the last line."""
import json, os, pty, select, struct, sys, time, fcntl, termios

plan = json.load(sys.stdin)
pid, fd = pty.fork()
if pid == 0:
    os.execvp(plan["argv"][0], plan["argv"])
fcntl.ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", 40, plan.get("columns", 60), 0, 0))
seen = b""
since = 0
steps = list(plan["steps"])
end = time.time() + 30
while time.time() < end:
    ready, _, _ = select.select([fd], [], [], 0.05)
    if ready:
        try:
            more = os.read(fd, 65536)
        except OSError:
            break
        if not more:
            break
        seen += more
    while steps and steps[0][0].encode() in seen[since:]:
        step = steps.pop(0)
        since = len(seen)
        if len(step) > 2:
            os.kill(pid, step[1])
        else:
            os.write(fd, step[1].encode())
else:
    os.kill(pid, 9)
_, status = os.waitpid(pid, 0)
sys.stdout.buffer.write(seen)
sys.stdout.buffer.write(("\n%d %d" % (os.waitstatus_to_exitcode(status), len(steps))).encode())
