# Not reviewed by a native setter yet.
# What is bought and carried.

QTY-101 = Una hoja entera es más de lo que una persona puede levantar con las manos a { $reach }.
    .where = hojas { $at }
    .two = Llévela entre dos, { $half } cada uno; o márquela y quiébrela donde está.

QTY-102 = Una hoja entera es más de lo que dos personas pueden levantar con las manos a { $reach }.
    .where = hojas { $at }
    .cart = Márquela y quiébrela donde está, métala en un carro y párela entre tres, o compre hojas más chicas.
