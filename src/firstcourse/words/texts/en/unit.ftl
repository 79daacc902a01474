# Units behind their number; what is not here is written alike in every tongue.

unit-ft = ft
unit-in = in
unit-sq_ft = sq ft
unit-cu_ft = cu ft
unit-sq_in = sq in
unit-in_per_ft = in per ft
unit-gal = gal
unit-lb = lb
unit-fl_oz = fl oz
unit-l = l
unit-lb_sq_ft = lb/sq ft
unit-lb_cu_ft = lb/cu ft
unit-psf = psf
unit-psi = psi
unit-days = days
unit-hours = hours
unit-gal_per_100_sq_ft = gal per 100 sq ft
unit-lb_gal = lb/gal
unit-in_ft = in/ft
unit-mm_per_m = mm per m
unit-litres = litres
unit-cu_in = cu in
unit-pieces = pieces
unit-under = under { $length }
unit-level = level
