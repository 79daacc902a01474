# What the terminal says.

cli-stop = STOPS THE WORK
cli-fix = TO FIX ON THE WAY
cli-note = TO KNOW

# A line under a finding.
cli-finding =
    .measured = measured: { $text }
    .limit = limit: { $text }
    .rule = rule: { $text }
    .source = source: { $text }
    .do = do: { $text }

# A rule that the job sets, its value and why.
cli-changed = changed for this job: { $change }

cli-stopped = the work is stopped: { $what }
cli-verified = { $file }: consistent, verified
cli-objections = { $file }: { $count } { $count ->
    [one] objection
   *[other] objections
}
