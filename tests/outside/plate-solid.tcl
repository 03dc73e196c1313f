# Reads a STEP file and says what a CAD kernel makes of it: whether the solid is valid, its volume, its faces. For occt-draw -b -f.
pload MODELING
pload XSDRAW
stepread $env(TRIVET_STEP) s *
puts "CHECK [checkshape s_1]"
puts "WHAT [whatis s_1]"
puts "VOLUME [vprops s_1 1.e-7]"
foreach f [explode s_1 f] {
  mksurface g $f
  puts "FACE [dump g]"
}
exit
