# Not reviewed by a native setter yet.
# The strip of a pole at full size.
poles-title = Reglas de hiladas a tamaño natural
poles-page = { $job }: reglas de hiladas a tamaño natural, plan { $digest }, página { $page } de { $pages }
poles-check = Revise: esta línea mide { $length }. Si no, imprima otra vez al 100 %. { $title }
poles-how = Recorte; ponga las cruces inferiores de cada tira sobre las cruces superiores de la anterior; pegue.
poles-strip = tira { $number } de { $of }
poles-span = { $start } a { $end }
