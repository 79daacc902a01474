# Not reviewed by a native setter yet.
# Units behind their number; what is not here is written alike in every tongue.

unit-ft = ft
unit-in = in
unit-sq_ft = sq ft
unit-cu_ft = cu ft
unit-sq_in = sq in
unit-in_per_ft = in por ft
unit-gal = gal
unit-lb = lb
unit-fl_oz = fl oz
unit-l = l
unit-lb_sq_ft = lb/sq ft
unit-lb_cu_ft = lb/cu ft
unit-psf = psf
unit-psi = psi
unit-days = días
unit-hours = horas
unit-gal_per_100_sq_ft = gal por 100 sq ft
unit-lb_gal = lb/gal
unit-in_ft = in/ft
unit-mm_per_m = mm por m
unit-litres = litros
unit-cu_in = cu in
unit-pieces = piezas
unit-under = menos de { $length }
unit-level = a nivel
