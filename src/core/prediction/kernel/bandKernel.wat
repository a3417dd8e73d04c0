;; The innermost loops of a prediction, two bands at a time. Every function is the twin of plain code in core/prediction
;; (wettableGarment, printedReflectance), which tests hold it equal to; constants of the model arrive as arguments.
;; A spectrum is 36 numbers of 8 bytes, 288 bytes. Cloth is passed on as u = 1 / R, so that no division is made twice:
;; u = 1 + q + sqrt(q (q + 2)) with q = factor K/S (Kubelka & Munk 1931). Written out where it is needed, because engines
;; do not inline calls.
(module
  (memory (export "memory") 20)

  ;; One dyed fibre of a heather: adds mass (u - 1) / (m + floor u), its blend value (Stearns & Noechel 1944), to the
  ;; number at `sum`; floor = 0.01 (1 - m). With `fresh` the sum starts from `start` in every band.
  (func (export "addFibre")
    (param $ks i32) (param $sum i32) (param $factor f64) (param $mass f64)
    (param $m f64) (param $floor f64) (param $fresh i32) (param $start f64)
    (local $end i32) (local $by v128) (local $q v128) (local $u v128) (local $before v128)
    (local.set $by (f64x2.splat (local.get $factor)))
    (local.set $before (f64x2.splat (local.get $start)))
    (local.set $end (i32.add (local.get $ks) (i32.const 288)))
    (loop $bands
      (local.set $q (f64x2.mul (local.get $by) (v128.load (local.get $ks))))
      (local.set $u
        (f64x2.add (f64x2.add (f64x2.splat (f64.const 1)) (local.get $q))
          (f64x2.sqrt (f64x2.mul (local.get $q) (f64x2.add (local.get $q) (f64x2.splat (f64.const 2)))))))
      (if (i32.eqz (local.get $fresh)) (then (local.set $before (v128.load (local.get $sum)))))
      (v128.store (local.get $sum)
        (f64x2.add (local.get $before)
          (f64x2.div
            (f64x2.mul (f64x2.splat (local.get $mass))
              (f64x2.sub (local.get $u) (f64x2.splat (f64.const 1))))
            (f64x2.add (f64x2.splat (local.get $m))
              (f64x2.mul (f64x2.splat (local.get $floor)) (local.get $u))))))
      (local.set $sum (i32.add (local.get $sum) (i32.const 16)))
      (br_if $bands
        (i32.lt_u
          (local.tee $ks (i32.add (local.get $ks) (i32.const 16)))
          (local.get $end)))))

  ;; The blend's u = (1 + f m) / (1 - floor f) of the summed blend values f at `sum`, written over them.
  (func (export "remix") (param $sum i32) (param $m f64) (param $floor f64)
    (local $end i32) (local $f v128)
    (local.set $end (i32.add (local.get $sum) (i32.const 288)))
    (loop $bands
      (local.set $f (v128.load (local.get $sum)))
      (v128.store (local.get $sum)
        (f64x2.div
          (f64x2.add (f64x2.splat (f64.const 1))
            (f64x2.mul (local.get $f) (f64x2.splat (local.get $m))))
          (f64x2.sub (f64x2.splat (f64.const 1))
            (f64x2.mul (local.get $f) (f64x2.splat (local.get $floor))))))
      (br_if $bands
        (i32.lt_u
          (local.tee $sum (i32.add (local.get $sum) (i32.const 16)))
          (local.get $end)))))

  ;; What is seen of a film (T^2 and then R0, at `film`) over cloth of u at `cloth`, summed with the weights x, y, z at
  ;; `weights` into three numbers at `out`. With m = u - R0 and n = R0 m + T^2 the film over the cloth is n / m and under
  ;; its surface, open and closed parts together, n (both m - inside n) / (m (m - k2 n)), where both = open + leaving and
  ;; inside = k2 open (Kubelka 1948; Saunderson 1942). With `ks` other than 0 evenly dyed
  ;; cloth of that K/S times `factor` is wetted on the way, its u left at `cloth`.
  (func $seenOver (export "seenOver")
    (param $ks i32) (param $factor f64) (param $cloth i32) (param $film i32) (param $weights i32) (param $out i32)
    (param $both f64) (param $inside f64) (param $k2 f64)
    (local $end i32) (local $q v128) (local $u v128) (local $own v128) (local $m v128) (local $n v128)
    (local $seen v128)
    (local $x v128) (local $y v128) (local $z v128)
    (local.set $end (i32.add (local.get $cloth) (i32.const 288)))
    (loop $bands
      (if (local.get $ks)
        (then
          (local.set $q (f64x2.mul (f64x2.splat (local.get $factor)) (v128.load (local.get $ks))))
          (local.set $u
            (f64x2.add (f64x2.add (f64x2.splat (f64.const 1)) (local.get $q))
              (f64x2.sqrt
                (f64x2.mul (local.get $q) (f64x2.add (local.get $q) (f64x2.splat (f64.const 2)))))))
          (v128.store (local.get $cloth) (local.get $u))
          (local.set $ks (i32.add (local.get $ks) (i32.const 16))))
        (else (local.set $u (v128.load (local.get $cloth)))))
      (local.set $own (v128.load offset=288 (local.get $film)))
      (local.set $m (f64x2.sub (local.get $u) (local.get $own)))
      (local.set $n
        (f64x2.add (f64x2.mul (local.get $own) (local.get $m)) (v128.load (local.get $film))))
      (local.set $seen
        (f64x2.div
          (f64x2.mul (local.get $n)
            (f64x2.sub
              (f64x2.mul (f64x2.splat (local.get $both)) (local.get $m))
              (f64x2.mul (f64x2.splat (local.get $inside)) (local.get $n))))
          (f64x2.mul (local.get $m)
            (f64x2.sub (local.get $m) (f64x2.mul (f64x2.splat (local.get $k2)) (local.get $n))))))
      (local.set $x
        (f64x2.add (local.get $x) (f64x2.mul (local.get $seen) (v128.load (local.get $weights)))))
      (local.set $y
        (f64x2.add (local.get $y)
          (f64x2.mul (local.get $seen) (v128.load offset=288 (local.get $weights)))))
      (local.set $z
        (f64x2.add (local.get $z)
          (f64x2.mul (local.get $seen) (v128.load offset=576 (local.get $weights)))))
      (local.set $film (i32.add (local.get $film) (i32.const 16)))
      (local.set $weights (i32.add (local.get $weights) (i32.const 16)))
      (br_if $bands
        (i32.lt_u
          (local.tee $cloth (i32.add (local.get $cloth) (i32.const 16)))
          (local.get $end))))
    (f64.store (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $x)) (f64x2.extract_lane 1 (local.get $x))))
    (f64.store offset=8 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $y)) (f64x2.extract_lane 1 (local.get $y))))
    (f64.store offset=16 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $z)) (f64x2.extract_lane 1 (local.get $z)))))

  ;; `seenOver` for `count` films whose addresses (4 bytes each) are listed at `list`, over cloth that is wetted already; each
  ;; leaves its three sums after those of the one before.
  (func (export "seenOverEach")
    (param $list i32) (param $count i32) (param $cloth i32) (param $weights i32) (param $out i32)
    (param $both f64) (param $inside f64) (param $k2 f64)
    (loop $films
      (call $seenOver
        (i32.const 0) (f64.const 1) (local.get $cloth) (i32.load (local.get $list)) (local.get $weights)
        (local.get $out) (local.get $both) (local.get $inside) (local.get $k2))
      (local.set $list (i32.add (local.get $list) (i32.const 4)))
      (local.set $out (i32.add (local.get $out) (i32.const 24)))
      (br_if $films (local.tee $count (i32.sub (local.get $count) (i32.const 1))))))

  ;; Values of a fitted surface (responseSurface: 6 x 4 coefficients of x^i y^j, row by row, at `surface`) at `pairs` pairs of
  ;; points, x at `xs` and y at `ys`, into `out`.
  (func (export "surfaceAt")
    (param $surface i32) (param $xs i32) (param $ys i32) (param $out i32) (param $pairs i32)
    (local $row i32) (local $x v128) (local $y v128) (local $value v128)
    (loop $points
      (local.set $x (v128.load (local.get $xs)))
      (local.set $y (v128.load (local.get $ys)))
      (local.set $value (f64x2.splat (f64.const 0)))
      (local.set $row (i32.add (local.get $surface) (i32.const 160)))
      (loop $rows
        (local.set $value
          (f64x2.add
            (f64x2.mul (local.get $value) (local.get $x))
            (f64x2.add (v128.load64_splat (local.get $row))
              (f64x2.mul (local.get $y)
                (f64x2.add (v128.load64_splat offset=8 (local.get $row))
                  (f64x2.mul (local.get $y)
                    (f64x2.add (v128.load64_splat offset=16 (local.get $row))
                      (f64x2.mul (local.get $y) (v128.load64_splat offset=24 (local.get $row))))))))))
        (br_if $rows
          (i32.ge_s
            (local.tee $row (i32.sub (local.get $row) (i32.const 32)))
            (local.get $surface))))
      (v128.store (local.get $out) (local.get $value))
      (local.set $xs (i32.add (local.get $xs) (i32.const 16)))
      (local.set $ys (i32.add (local.get $ys) (i32.const 16)))
      (local.set $out (i32.add (local.get $out) (i32.const 16)))
      (br_if $points (local.tee $pairs (i32.sub (local.get $pairs) (i32.const 1))))))
)
