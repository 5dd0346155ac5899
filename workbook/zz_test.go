package workbook
import ("testing";"os";"bytes";"time";"fmt"
"tentwright/catalog";"tentwright/quote/job";"tentwright/quote";"tentwright/workbook/xlsx")
func TestZZ(t *testing.T){
 c,l:=catalog.Load("demo",catalog.Demo()); if c==nil {t.Fatal(l.Err())}
 data,_:=os.ReadFile("/tmp/j1.yaml")
 j,l:=job.Read("j1.yaml",data); if j==nil{t.Fatal(l.Err())}
 q,l:=quote.Build(c,j); if q==nil{t.Fatal(l.Err())}
 t0:=time.Now()
 b:=Layout(q)
 fmt.Println("layout",time.Since(t0))
 var buf bytes.Buffer
 t0=time.Now()
 if err:=xlsx.Write(&buf,b); err!=nil{t.Fatal(err)}
 fmt.Println("write",time.Since(t0), buf.Len())
 os.WriteFile("/tmp/j1.xlsx",buf.Bytes(),0o644)
 buf.Reset()
 if err:=xlsx.Write(&buf,Customer(q)); err!=nil{t.Fatal(err)}
 os.WriteFile("/tmp/j1c.xlsx",buf.Bytes(),0o644)
}
