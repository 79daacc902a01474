# The strip of a pole at full size.
poles-title = Story poles at full size
poles-page = { $job }: story poles at full size, plan { $digest }, page { $page } of { $pages }
poles-check = Check: this line is { $length } long. If not, print again at 100 %. { $title }
poles-how = Cut out; lay the lower crosses of each strip on the upper crosses of the one before; glue.
poles-strip = strip { $number } of { $of }
poles-span = { $start } to { $end }
